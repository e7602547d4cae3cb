/** Hands the player a file among their downloads. */
export const download = (content: BlobPart, type: string, fileName: string): void => {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = fileName;
  link.click();
  // The click has started the download; the page may let go of the bytes when that has them.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
};

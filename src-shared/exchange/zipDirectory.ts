import { strFromU8 } from "fflate";

/** What a zip archive's central directory says of a file. */
export type ZipRecord = { readonly name: string; readonly crc: number };

const END_OF_DIRECTORY = 0x06054b50;
const FILE_RECORD = 0x02014b50;
const END_LENGTH = 22;
const RECORD_LENGTH = 46;
const LONGEST_COMMENT = 0xffff;
/** Names are UTF-8. */
const UTF8_FLAG = 0x800;

/**
 * The files that a zip archive's central directory lists, at most `most` of them; null where there is
 * no whole directory, as in a file that was cut off. Source: PKWARE APPNOTE 6.3, sections 4.3.12
 * and 4.3.16.
 */
export const zipDirectory = (bytes: Uint8Array, most: number): readonly ZipRecord[] | null => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const first = Math.max(0, bytes.length - END_LENGTH - LONGEST_COMMENT);
  let end = bytes.length - END_LENGTH;
  while (end >= first && view.getUint32(end, true) !== END_OF_DIRECTORY) {
    end -= 1;
  }
  if (end < first) {
    return null;
  }
  const count = Math.min(most, view.getUint16(end + 10, true));
  const records: ZipRecord[] = [];
  let at = view.getUint32(end + 16, true);
  while (records.length < count) {
    if (at + RECORD_LENGTH > end || view.getUint32(at, true) !== FILE_RECORD) {
      return null;
    }
    const nameLength = view.getUint16(at + 28, true);
    const from = at + RECORD_LENGTH;
    const isUtf8 = (view.getUint16(at + 8, true) & UTF8_FLAG) !== 0;
    const name = strFromU8(bytes.subarray(from, from + nameLength), !isUtf8);
    records.push({ name, crc: view.getUint32(at + 16, true) });
    at = from + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return records;
};

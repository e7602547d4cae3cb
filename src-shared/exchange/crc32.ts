/** The polynomial of zip, gzip and PNG, lowest bit first (ISO 3309, ITU-T V.42). */
const POLYNOMIAL = 0xedb88320;

const table: Uint32Array = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) {
    rest = (rest & 1) === 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1;
  }
  return rest;
});

/**
 * The CRC-32 of bytes, 0 to 2^32 - 1.
 * @example crc32(Uint8Array.of(49, 50, 51, 52, 53, 54, 55, 56, 57)) // => 0xcbf43926
 */
export const crc32 = (bytes: Uint8Array): number => {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest = (rest >>> 8) ^ (table[(rest ^ byte) & 0xff] ?? 0);
  }
  return (rest ^ 0xffffffff) >>> 0;
};

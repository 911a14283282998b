// Polynomial of ISO 3309 (Ethernet, zip, PNG), reflected.
const polynomial = 0xedb88320;

const table: readonly number[] = Array.from({ length: 256 }, (_, start) => {
  let value = start;
  for (let bit = 0; bit < 8; bit++)
    value = (value & 1) === 1 ? (value >>> 1) ^ polynomial : value >>> 1;
  return value >>> 0;
});

/** CRC-32 of a text of ASCII letters: a number from 0 to 2^32 − 1 that is the same everywhere. */
export function crc32(text: string): number {
  let value = 0xffffffff;
  for (let at = 0; at < text.length; at++) {
    value = (value >>> 8) ^ (table[(value ^ text.charCodeAt(at)) & 0xff] ?? 0);
  }
  return (value ^ 0xffffffff) >>> 0;
}

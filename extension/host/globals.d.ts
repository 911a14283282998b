// What both extension hosts (Node and web worker) offer beside the language; declared here because
// the host sees neither the DOM's types nor Node's.
declare const crypto: { getRandomValues(bytes: Uint8Array): Uint8Array };
declare class TextDecoder {
  decode(bytes: Uint8Array): string;
}
declare class TextEncoder {
  encode(text: string): Uint8Array;
}
declare function setTimeout(run: () => void, milliseconds: number): number;
declare function clearTimeout(timer: number): void;
/** Bytes of a base64 text, one a character. */
declare function atob(text: string): string;

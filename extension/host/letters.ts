const letters = 'abcdefghijklmnopqrstuvwxyz';

/** Three random letters for a new row's id: running numbers collide after merges. */
export function newLetters(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(3));
  return Array.from(bytes, (byte) => letters[byte % letters.length]).join('');
}

import type { TextChange } from './source.ts';

/** The text after changes that are sorted, do not overlap, and are relative to the text before. */
export function changedText(text: string, changes: readonly TextChange[]): string {
  const pieces: string[] = [];
  let at = 0;
  for (const change of changes) {
    pieces.push(text.slice(at, change.start), change.text);
    at = change.end;
  }
  pieces.push(text.slice(at));
  return pieces.join('');
}

/** The changes that lead from the changed text back to the text before. */
export function invertChanges(text: string, changes: readonly TextChange[]): readonly TextChange[] {
  let shift = 0;
  return changes.map((change) => {
    const start = change.start + shift;
    shift += change.text.length - (change.end - change.start);
    return {
      start,
      end: start + change.text.length,
      text: text.slice(change.start, change.end),
    };
  });
}

/** A stretch of the text before that is kept, or a new text. */
type Piece =
  | { readonly kept: true; readonly start: number; readonly end: number }
  | { readonly kept: false; readonly text: string };

function pieceLength(piece: Piece): number {
  return piece.kept ? piece.end - piece.start : piece.text.length;
}

function slicedPiece(piece: Piece, from: number, to: number): Piece {
  return piece.kept
    ? { kept: true, start: piece.start + from, end: piece.start + to }
    : { kept: false, text: piece.text.slice(from, to) };
}

function piecesOf(length: number, changes: readonly TextChange[]): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  for (const { start, end, text } of changes) {
    pieces.push({ kept: true, start: at, end: start }, { kept: false, text });
    at = end;
  }
  pieces.push({ kept: true, start: at, end: length });
  return pieces.filter((piece) => pieceLength(piece) > 0);
}

/** Splits pieces at offsets of the text they make, so that each offset is a border. */
function cutPieces(pieces: readonly Piece[], offsets: readonly number[]): Piece[] {
  const cut: Piece[] = [];
  let at = 0;
  let next = 0;
  for (const piece of pieces) {
    const length = pieceLength(piece);
    let from = 0;
    for (; next < offsets.length; next++) {
      const offset = (offsets[next] ?? 0) - at;
      if (offset >= length) break;
      if (offset > from) {
        cut.push(slicedPiece(piece, from, offset));
        from = offset;
      }
    }
    cut.push(slicedPiece(piece, from, length));
    at += length;
  }
  return cut;
}

function changedPieces(pieces: readonly Piece[], changes: readonly TextChange[]): Piece[] {
  const cut = cutPieces(
    pieces,
    changes.flatMap((change) => [change.start, change.end]),
  );
  const made: Piece[] = [];
  let at = 0;
  let index = 0;
  for (const change of changes) {
    for (; index < cut.length && at < change.start; index++) {
      const piece = cut[index];
      if (piece === undefined) break;
      made.push(piece);
      at += pieceLength(piece);
    }
    if (change.text !== '') made.push({ kept: false, text: change.text });
    for (; index < cut.length && at < change.end; index++) {
      const piece = cut[index];
      if (piece === undefined) break;
      at += pieceLength(piece);
    }
  }
  return [...made, ...cut.slice(index)];
}

/**
 * One list of changes that does what `first` and then `second` do; `second` is relative to the text
 * that `first` leaves. What comes out as it was is no change.
 */
export function joinedChanges(
  original: string,
  first: readonly TextChange[],
  second: readonly TextChange[],
): readonly TextChange[] {
  if (second.length === 0) return first;
  const pieces = changedPieces(piecesOf(original.length, first), second);
  const joined: TextChange[] = [];
  let at = 0;
  let text = '';
  const close = (start: number): void => {
    if (original.slice(at, start) !== text) joined.push({ start: at, end: start, text });
    text = '';
  };
  for (const piece of pieces) {
    if (!piece.kept) {
      text += piece.text;
      continue;
    }
    close(piece.start);
    at = piece.end;
  }
  close(original.length);
  return joined;
}

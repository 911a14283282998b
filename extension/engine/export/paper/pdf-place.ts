import type { PdfElement } from '../pdf-objects.ts';
import type { Face } from './pdf-text.ts';

/** Where blocks stand across the page, and the element that they belong to. */
export interface Place {
  readonly x: number;
  readonly width: number;
  readonly parent: PdfElement;
  /** Larger letters, which are read from a step away; 1 unless told. */
  readonly scale?: number;
}

/** A face in the size that a place asks for. */
export function scaled({ font, size }: Face, { scale = 1 }: Place): Face {
  return { font, size: size * scale };
}

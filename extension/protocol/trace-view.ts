import type { PictureView } from './panel-view.ts';

/** An outline that is to be made from measured points. */
export interface TraceWish {
  /** The list as it was pasted. */
  readonly list: string;
  /** Points round the outline, or offsets from a straight edge. */
  readonly mode: 'points' | 'stations';
  /** Smooth through the points but for corners, or straight from point to point. */
  readonly smooth: boolean;
}

/** The outline as it would be, or why there is none. */
export interface TraceView {
  /** Why there is none; empty where there is one. */
  readonly message: string;
  /** How large it is. */
  readonly sentence: string;
  readonly picture: PictureView | undefined;
}

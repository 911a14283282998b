/** Pictures of a panel, ready to draw: every text is ready to show, coordinates are mm with y up. */

export type PictureKind = 'plan' | 'section' | 'skin' | 'strip';

/** As the rows place it, or the left or right one of the car. */
export type PanelHand = 'drawn' | 'left' | 'right';

/** Which picture of the job is wanted. Names that are no longer there fall back on the first. */
export interface PanelWish {
  /** Key of the base's row, `door_base`; empty for the first. */
  readonly base: string;
  readonly hand: PanelHand;
  readonly picture: PictureKind;
  /** Key of the ring that a section or a strip is of; empty for the first. */
  readonly ring: string;
}

/** A line or area of a picture. Rows are named `part/mid_ring`, or empty. */
export interface PictureLine {
  readonly kind: 'line';
  readonly role: string;
  /** x and y in turn, in mm, to 1/100. */
  readonly at: readonly number[];
  readonly closed: boolean;
  readonly filled: boolean;
  readonly holes: readonly (readonly number[])[];
  readonly arrow: boolean;
  readonly row: string;
  /** Row that it moves with. */
  readonly owner: string;
}

export interface PictureText {
  readonly kind: 'text';
  readonly role: string;
  readonly at: readonly [x: number, y: number];
  readonly text: string;
  /** Height of a capital letter in mm; 0 for what suits the screen. */
  readonly height: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Counter-clockwise, in degrees. */
  readonly angle: number;
  readonly row: string;
  readonly owner: string;
}

export type PictureMark = PictureLine | PictureText;

export interface PictureView {
  readonly box: {
    readonly left: number;
    readonly bottom: number;
    readonly right: number;
    readonly top: number;
  };
  readonly marks: readonly PictureMark[];
}

/** What the skin is coloured by: a figure at each point, between two that the legend tells. */
export interface SkinScale {
  readonly key: 'height' | 'stretch';
  readonly label: string;
  /** One a point, in base units. */
  readonly values: readonly number[];
  readonly least: number;
  readonly most: number;
  /** Texts of the legend from `least` to `most`, evenly spaced. */
  readonly ticks: readonly string[];
}

/** The stretched cloth as triangles, in mm: x to the right, y up, z towards who looks. */
export interface SkinView {
  /** x, y and z in turn. */
  readonly points: readonly number[];
  /** Three indices of points a triangle. */
  readonly triangles: readonly number[];
  /** Edges that are drawn over it: x, y and z in turn along each. */
  readonly edges: readonly (readonly number[])[];
  readonly scales: readonly SkinScale[];
}

/** A row that can be dragged to another place. */
export interface MovableView {
  /** `part/mid_ring`. */
  readonly row: string;
  /** Where its cells place it, in mm. */
  readonly x: number;
  readonly y: number;
  /** Why it cannot be dragged; empty where it can. */
  readonly held: string;
}

export interface PanelChoice {
  readonly value: string;
  readonly label: string;
}

export interface PanelView {
  /** What is shown in fact. */
  readonly wish: PanelWish;
  readonly bases: readonly PanelChoice[];
  readonly hands: readonly PanelChoice[];
  readonly rings: readonly PanelChoice[];
  readonly title: string;
  /** What the picture shows, for who cannot see it. */
  readonly words: readonly string[];
  /** Why there is no picture; empty where there is one. */
  readonly message: string;
  readonly drawing: PictureView | undefined;
  readonly skin: SkinView | undefined;
  /** Rows that marks stand for, by `part/mid_ring`, in words. */
  readonly rows: Readonly<Record<string, string>>;
  readonly movables: readonly MovableView[];
  /** Drags go in steps of this, in mm. */
  readonly step: number;
  /** True where x runs to the left. */
  readonly mirrored: boolean;
  /** Name of its file, without an ending. */
  readonly file: string;
}

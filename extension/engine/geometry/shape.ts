/** A plain closed shape; sizes in mm. `length` lies along the row's x, `width` along its y. */
export type Shape =
  | { readonly kind: 'circle'; readonly diameter: number }
  | { readonly kind: 'oval'; readonly length: number; readonly width: number }
  | { readonly kind: 'rect'; readonly length: number; readonly width: number }
  | {
      readonly kind: 'roundrect';
      readonly length: number;
      readonly width: number;
      readonly radius: number;
    };

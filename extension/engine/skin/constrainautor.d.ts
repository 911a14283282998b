// The package offers its source as its typing, which our stricter settings refuse; this is what we use.
import type Delaunator from 'delaunator';

export default class Constrainautor {
  constructor(triangulation: Delaunator<ArrayLike<number>>);
  /** Makes an edge of the triangulation; throws where it crosses an edge made before. */
  constrainOne(from: number, to: number): number;
  /** Makes the triangles without a constrained edge between them Delaunay again. */
  delaunify(deep?: boolean): this;
}

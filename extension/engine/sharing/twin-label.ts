const label = /, put in (as|beside) ([a-z][a-z0-9_]*)$/;

/** What a marker says of a row that was put in under an id which another row has. */
export interface TwinLabel {
  /** The id that both wanted. */
  readonly id: string;
  /** True where the other row is new too, so that this one may take its place. */
  readonly isRival: boolean;
}

export function twinLabel({ id, isRival }: TwinLabel): string {
  return `, put in ${isRival ? 'as' : 'beside'} ${id}`;
}

/** Reads the end of a marker line; undefined where it says nothing of the kind. */
export function twinOfLabel(markerLine: string): TwinLabel | undefined {
  const found = label.exec(markerLine.trimEnd());
  const id = found?.[2];
  return id === undefined ? undefined : { id, isRival: found?.[1] === 'as' };
}

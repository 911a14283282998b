/** What `panelwright merge` is asked for. */
export type MergeRequest =
  | {
      readonly command: 'merge';
      readonly base: string;
      readonly ours: string;
      readonly theirs: string;
      /** File it is written to; undefined for the standard output. */
      readonly out: string | undefined;
      /** The file's place in the repository, for what is printed. */
      readonly path: string | undefined;
      /** Letters of a conflict marker. */
      readonly markerSize: number;
      readonly json: boolean;
    }
  | {
      readonly command: 'set-up-merging';
      readonly folder: string;
      /** Written without being asked again. */
      readonly yes: boolean;
    };

interface Words {
  readonly words: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
}

type Asked =
  | { readonly ok: true; readonly request: MergeRequest }
  | { readonly ok: false; readonly fault: string };

/** Reads the words of `merge`, as a person or as git writes them. */
export function mergeRequest({ words, flags, values }: Words): Asked {
  const [base, ours, theirs] = words;
  if (flags.has('--set-up')) {
    if (words.length > 1) return { ok: false, fault: 'merge --set-up takes one folder.' };
    const request = { folder: base ?? '.', yes: flags.has('--yes') };
    return { ok: true, request: { command: 'set-up-merging', ...request } };
  }
  if (base === undefined || ours === undefined || theirs === undefined) {
    return { ok: false, fault: 'merge needs three files: BASE OURS THEIRS.' };
  }
  const size = values.get('--marker-size') ?? '7';
  const markerSize = Number(size);
  if (!Number.isInteger(markerSize) || markerSize < 7 || markerSize > 200) {
    return { ok: false, fault: `--marker-size is a whole number from 7 up, not ${size}.` };
  }
  const out = values.get('-o') ?? values.get('--out');
  const path = values.get('--path');
  const json = flags.has('--json');
  return {
    ok: true,
    request: { command: 'merge', base, ours, theirs, out, path, markerSize, json },
  };
}

/** What a command takes behind its name. */
export interface Shape {
  readonly flags: readonly string[];
  /** Options that take a value. */
  readonly values: readonly string[];
  /** Options that take a value and may be given more than once. */
  readonly many?: readonly string[];
  /** What its words are called in a fault, and how many it takes. */
  readonly word: string;
  readonly least: number;
  readonly most: number;
}

/** The words of a call, sorted. */
export interface Words {
  readonly words: readonly string[];
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
  /** Values of options that may be given more than once, in their order. */
  readonly many: ReadonlyMap<string, readonly string[]>;
}

/** What a call asks for, or a sentence that says what is wrong with it. */
export type Asking<Request> =
  { readonly ok: true; readonly request: Request } | { readonly ok: false; readonly fault: string };

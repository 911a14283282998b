/** What a command may do outside: read files and write to its two streams. */
export interface World {
  /** Text of a file; undefined where it cannot be read. */
  readonly read: (path: string) => string | undefined;
  /** What is piped in. */
  readonly input: () => string;
  /** Address of a file that another file names. */
  readonly beside: (file: string, path: string) => string;
  /** Writes a file, with the folders it lies in; false where that cannot be done. */
  readonly write: (path: string, content: string | Uint8Array) => boolean;
  /** Address of a file in a folder. */
  readonly within: (folder: string, name: string) => string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Version of the program. */
  readonly version: string;
  /** Runs git in a folder; status −1 where there is no git. */
  readonly git: (
    args: readonly string[],
    folder?: string,
  ) => { readonly status: number; readonly out: string };
  /** Milliseconds that have passed, from any start. */
  readonly clock: () => number;
  /** The program file that git is to call for a merge. */
  readonly driver: string;
}

/** What the program ends with: all is well, the job has problems, or it was called wrongly. */
export const exitCodes = { fine: 0, problems: 1, misuse: 2 } as const;
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

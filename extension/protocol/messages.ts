import type { ActualsView } from './actuals-view.ts';
import type { CellAddress, RowAddress } from './addresses.ts';
import type { CheckView } from './check-view.ts';
import type { CompareView } from './compare-view.ts';
import type { MoneyView } from './price-view.ts';
import type { TraceView, TraceWish } from './trace-view.ts';
import type { CutOther, CutView, CutWish } from './cut-view.ts';
import type { CostDriversView } from './drivers-view.ts';
import type { KitPreview, KitView } from './kit-view.ts';
import type { MixView } from './mix-view.ts';
import type { OptionsView } from './options-view.ts';
import type { PanelView, PanelWish } from './panel-view.ts';
import type { ScheduleView } from './schedule-view.ts';
import type { ConflictChoice, ConflictTotal, ResolveView } from './resolve-view.ts';
import type {
  BillView,
  CardView,
  ChoiceOption,
  CompletionView,
  GroupView,
  HeadlineView,
  JobView,
  KnobView,
  ProblemView,
  SheetView,
  WhereFromView,
} from './views.ts';

export type { CellAddress, RowAddress } from './addresses.ts';

/** One step of a gesture as the grid sends it; texts are as the person typed them. */
export type GridEdit =
  /** Empty text clears the cell. */
  | { readonly kind: 'type'; readonly cell: CellAddress; readonly text: string }
  | {
      readonly kind: 'insert';
      readonly table: string;
      /** Kind of the new row, where the table has kinds. */
      readonly rowKind: string;
      /** Row under the cursor: the new row comes after it and stands `on` it if its kind fits. */
      readonly after: RowAddress | undefined;
    }
  | { readonly kind: 'duplicate'; readonly row: RowAddress }
  | { readonly kind: 'delete'; readonly row: RowAddress }
  /** One place up or down within its group. */
  | { readonly kind: 'move'; readonly row: RowAddress; readonly by: -1 | 1 }
  | { readonly kind: 'rename'; readonly row: RowAddress; readonly id: string }
  /** Puts a part elsewhere on its panel, in mm; it is written to the nearest step of the job's unit. */
  | { readonly kind: 'place'; readonly row: RowAddress; readonly x: number; readonly y: number }
  /** Locks a row's pieces where they lie on a sheet of a line, from 0; unlocks them where they are locked. */
  | {
      readonly kind: 'lock';
      readonly line: string;
      readonly sheet: number;
      readonly row: RowAddress;
    }
  | {
      readonly kind: 'kit';
      readonly kit: string;
      readonly answers: Readonly<Record<string, string>>;
    }
  /** Answers the questions of the job's template, which go with that. */
  | { readonly kind: 'answer'; readonly answers: Readonly<Record<string, string>> }
  /** Takes an option of the job into it: its cells are written and it is an option no more. */
  | { readonly kind: 'accept-option'; readonly row: RowAddress }
  /** Takes quick fix number `fix` of the problem `code` at `cell`. */
  | {
      readonly kind: 'fix';
      readonly cell: CellAddress;
      readonly code: string;
      readonly fix: number;
    };

/** Questions the webview asks; each is answered by one `reply` with the same `request`. */
export type Question =
  /** One gesture, one undo step. Answer: `EditReply`. */
  | { readonly ask: 'edit'; readonly revision: number; readonly edits: readonly GridEdit[] }
  | { readonly ask: 'card'; readonly row: RowAddress }
  | { readonly ask: 'choices'; readonly cell: CellAddress }
  | {
      readonly ask: 'complete';
      readonly cell: CellAddress;
      readonly text: string;
      readonly caret: number;
    }
  | { readonly ask: 'where-from'; readonly line: string }
  | { readonly ask: 'panel'; readonly wish: PanelWish }
  /** The same picture as a file: SVG text, black on white. */
  | { readonly ask: 'panel-svg'; readonly wish: PanelWish }
  | { readonly ask: 'cut'; readonly wish: CutWish }
  /** What the line would come to on each of its stocks alone. */
  | { readonly ask: 'cut-others'; readonly wish: CutWish }
  | { readonly ask: 'price' }
  | { readonly ask: 'mix' }
  | { readonly ask: 'schedule' }
  /** Works the job out once an option: asked for while it is looked at and the job rests. */
  | { readonly ask: 'options' }
  | { readonly ask: 'actuals' }
  /** Tries many cells: asked for when it is wanted, never with each edit. */
  | { readonly ask: 'cost-drivers' }
  | { readonly ask: 'where-from-cell'; readonly cell: CellAddress }
  | { readonly ask: 'kit'; readonly kit: string; readonly row: RowAddress | undefined }
  | {
      readonly ask: 'kit-preview';
      readonly kit: string;
      readonly answers: Readonly<Record<string, string>>;
    }
  /** The questions of the job's template that are not answered yet. */
  | { readonly ask: 'asks' }
  | { readonly ask: 'asks-preview'; readonly answers: Readonly<Record<string, string>> }
  /** What is open in a file with conflict markers. */
  | { readonly ask: 'conflicts' }
  | { readonly ask: 'conflict-totals'; readonly key: string }
  /** Settles conflicts by their keys; the others stay open. */
  | { readonly ask: 'settle'; readonly choices: Readonly<Record<string, ConflictChoice>> }
  | { readonly ask: 'trace'; readonly wish: TraceWish }
  /** Writes the outline as a file beside the job and its path into the cell. */
  | {
      readonly ask: 'write-trace';
      readonly wish: TraceWish;
      /** Name of the file, without folder and ending. */
      readonly name: string;
      readonly cell: CellAddress;
    };

/** Answer to `edit`: refused edits say why and change nothing; `focus` is a row to go to. */
export type EditReply =
  | { readonly ok: true; readonly revision: number; readonly focus: RowAddress | undefined }
  | { readonly ok: false; readonly message: string; readonly cell: CellAddress | undefined };

export interface Answers {
  readonly edit: EditReply;
  readonly card: CardView | undefined;
  readonly choices: readonly ChoiceOption[];
  readonly complete: CompletionView;
  readonly cut: CutView;
  readonly 'cut-others': readonly CutOther[];
  readonly price: MoneyView;
  readonly mix: MixView;
  readonly schedule: ScheduleView;
  readonly options: OptionsView;
  readonly actuals: ActualsView;
  readonly 'cost-drivers': CostDriversView;
  readonly panel: PanelView;
  readonly 'panel-svg': string;
  readonly 'where-from': WhereFromView;
  readonly 'where-from-cell': WhereFromView;
  readonly kit: KitView;
  readonly 'kit-preview': KitPreview;
  readonly asks: KitView;
  readonly 'asks-preview': KitPreview;
  readonly conflicts: ResolveView;
  readonly 'conflict-totals': readonly ConflictTotal[];
  readonly settle: EditReply;
  readonly trace: TraceView;
  readonly 'write-trace': EditReply;
}

export type FromWebview =
  /** First message; nothing is sent before it. */
  | { readonly type: 'ready' }
  | { readonly type: 'ask'; readonly request: number; readonly question: Question }
  /** Where the cursor is: for menus, commands and the status bar. */
  | { readonly type: 'cursor'; readonly cell: CellAddress | undefined; readonly editing: boolean }
  /** Selected cells, for the sum in the status bar. */
  | {
      readonly type: 'selection';
      readonly table: string;
      readonly rows: readonly RowAddress[];
      readonly columns: readonly string[];
    }
  | { readonly type: 'step-knob'; readonly knob: CellAddress; readonly by: -1 | 1 }
  | { readonly type: 'pin'; readonly cell: CellAddress; readonly pinned: boolean }
  /** Runs one of the extension's commands: `openAsText`, `switchUnits`, `exportBill`… */
  | { readonly type: 'command'; readonly name: string; readonly line?: number }
  /** Saves the file with every edit that was sent before. */
  | { readonly type: 'save' }
  /** Asks where to keep a picture and writes it there. */
  | {
      readonly type: 'save-picture';
      /** Name to offer, without an ending. */
      readonly name: string;
      readonly format: 'svg' | 'png';
      /** SVG text, or PNG bytes in base64. */
      readonly content: string;
    }
  /** A content-security violation or an exception, for tests and the log. */
  | { readonly type: 'fault'; readonly text: string };

export type ToWebview =
  /** Everything but rows; replaces what the webview had. */
  | { readonly type: 'shown'; readonly revision: number; readonly job: JobView }
  /** Rows of a sheet, packed (packing.ts); sent after `shown`, first those on screen. */
  | {
      readonly type: 'rows';
      readonly revision: number;
      readonly table: string;
      readonly rows: string;
    }
  /** What an edit changed. Absent parts did not change. */
  | {
      readonly type: 'patch';
      readonly revision: number;
      /** Request whose edit caused this, if it was this webview's. */
      readonly cause: number | undefined;
      /**
       * A typed cell comes in two: its row with the totals, which are painted at once, and then all
       * else that moved, with the same revision; problems and checks are of the second.
       */
      readonly part?: 'totals' | 'rest';
      /** Sheets whose order, groups or columns changed. */
      readonly sheets: readonly SheetView[];
      /** Changed and new rows, packed, of any table. */
      readonly rows: string;
      /** Totals of a sheet's groups, where the sheet itself is not sent again. */
      readonly groups?: readonly {
        readonly table: string;
        readonly groups: readonly GroupView[];
      }[];
      /** With `totals`, without the figures that are told behind them. */
      readonly headline?: HeadlineView;
      readonly knobs?: readonly KnobView[];
      readonly bill?: BillView;
      readonly checks?: readonly CheckView[];
      readonly problems?: readonly ProblemView[];
    }
  | { readonly type: 'reply'; readonly request: number; readonly answer: Answers[keyof Answers] }
  /** The question could not be answered. */
  | { readonly type: 'refused'; readonly request: number; readonly message: string }
  | { readonly type: 'focus-cell'; readonly cell: CellAddress }
  /** The job was opened to stay: what is typed next is meant for it. */
  | { readonly type: 'take-focus' }
  /** A command chosen in VS Code that the grid carries out: `insertRow`, `insertKit`, `whereFrom`… */
  | { readonly type: 'do'; readonly name: string; readonly argument: string }
  /** What differs from the version that the job is held against; undefined where it is held against none. */
  | { readonly type: 'compare'; readonly view: CompareView | undefined }
  /** How much of what a picture or the bill waits for is worked out, 0 to 1. */
  | { readonly type: 'progress'; readonly about: string; readonly share: number }
  /** Sums of the selection, shown also in VS Code's status bar. */
  | { readonly type: 'sum'; readonly text: string };

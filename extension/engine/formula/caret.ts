import type { UnitSettings } from '../units/quantity.ts';
import { isSymbol, type Token } from './token.ts';
import { tokensOf } from './tokens.ts';

/** The call, or the brackets of a list, that a caret stands in. */
export interface Around {
  /** In capitals, but `all` and `on` as they are. */
  readonly name: string;
  readonly argument: number;
  /** First words already written in the brackets. */
  readonly words: readonly string[];
}

export interface Caret {
  /** The word under the caret, up to the caret, and where it starts and ends in the text. */
  readonly word: string;
  readonly start: number;
  readonly end: number;
  /** Words of the path before it. */
  readonly before: readonly string[];
  /** A number stands right before the word: it can only be a unit. */
  readonly afterNumber: boolean;
  /** A list's brackets stand before the dot: its kinds are the words of the call around. */
  readonly list: readonly string[] | undefined;
  /** Innermost first. */
  readonly around: readonly Around[];
  /** Inside quotes nothing is completed. */
  readonly quoted: boolean;
}

const wordBefore = /[\p{L}_][\p{L}\p{N}_]*$/u;
const wordAfter = /^[\p{L}\p{N}_]*/u;
const pathBefore = /((?:[\p{L}_][\p{L}\p{N}_]*\.)*)$/u;

function opened(tokens: readonly Token[], index: number): Around {
  const name = tokens[index - 1];
  const words = name?.kind === 'name' ? name.steps.map((step) => step.word).join('.') : '';
  const list = words === 'all' || words === 'on';
  return { name: list ? words : words.toUpperCase(), argument: 0, words: [] };
}

function around(tokens: readonly Token[]): readonly Around[] {
  const stack: Around[] = [];
  for (const [index, token] of tokens.entries()) {
    const top = stack.at(-1);
    if (isSymbol(token, '(')) stack.push(opened(tokens, index));
    else if (isSymbol(token, ')')) stack.pop();
    else if (top !== undefined && isSymbol(token, ',', ';')) {
      stack[stack.length - 1] = { ...top, argument: top.argument + 1 };
    } else if (top !== undefined && token.kind === 'name') {
      const word = token.steps.map((step) => step.word).join('.');
      stack[stack.length - 1] = { ...top, words: [...top.words, word] };
    }
  }
  return stack.reverse();
}

function isOpenText(text: string): boolean {
  return (text.match(/"/g)?.length ?? 0) % 2 === 1;
}

/** Kinds of the list whose closing bracket and dot stand right before the word. */
function listBefore(text: string): readonly string[] | undefined {
  const found = /(?<![\p{L}\p{N}_])(all|on)\s*\(([^()]*)\)\.$/u.exec(text);
  if (found === null) return undefined;
  const words = (found[2] ?? '').split(/[,;]/).map((word) => word.trim());
  return found[1] === 'on' ? words.slice(1) : words;
}

/** What stands around the caret of a formula that is being typed. */
export function caretAt(text: string, caret: number, settings: UnitSettings): Caret {
  const written = text.slice(0, caret);
  const word = wordBefore.exec(written)?.[0] ?? '';
  const start = caret - word.length;
  const head = text.slice(0, start);
  const path = pathBefore.exec(head)?.[1] ?? '';
  const { tokens } = tokensOf(head, 1, settings);
  return {
    word,
    start,
    end: caret + (wordAfter.exec(text.slice(caret))?.[0].length ?? 0),
    before: path.split('.').slice(0, -1),
    afterNumber:
      path === '' && /\d\.?[ \u00a0]?$/.test(head) && !/[\p{L}_][\p{L}\p{N}_]*$/u.test(head),
    list: path === '' ? listBefore(head) : undefined,
    around: around(tokens.slice(0, -1)),
    quoted: isOpenText(written),
  };
}

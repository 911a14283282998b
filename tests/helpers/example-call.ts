import type { FunctionEntry } from '../../extension/engine/index.ts';

/** Where the bracket that opens before an offset closes. */
function closing(text: string, from: number): number {
  let depth = 1;
  for (let at = from; at < text.length; at++) {
    if (text[at] === '(') depth += 1;
    if (text[at] === ')') depth -= 1;
    if (depth === 0) return at;
  }
  throw new Error(`${text} has a bracket that is not closed`);
}

function parted(inside: string): readonly string[] {
  const parts = [''];
  let depth = 0;
  for (const sign of inside) {
    depth += sign === '(' ? 1 : sign === ')' ? -1 : 0;
    if (sign === ',' && depth === 0) parts.push('');
    else parts[parts.length - 1] = `${parts.at(-1) ?? ''}${sign}`;
  }
  return parts.map((part) => part.trim());
}

/** The arguments of a function in its own example, as written. */
export function exampleArguments({ name, example }: FunctionEntry): readonly string[] {
  const start = example.formula.indexOf(`${name}(`) + name.length + 1;
  return parted(example.formula.slice(start, closing(example.formula, start)));
}

/** The example's call with some arguments replaced, by index. */
export function exampleWith(
  entry: FunctionEntry,
  replaced: Readonly<Record<number, string>> = {},
): string {
  const args = exampleArguments(entry).map((text, index) => replaced[index] ?? text);
  return `${entry.name}(${args.join(', ')})`;
}

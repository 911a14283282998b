import { caretAt } from './caret.ts';
import type { Catalogue, Parameter } from './catalogue.ts';
import { parameterIndex } from './parameters.ts';

export interface Signature {
  readonly name: string;
  readonly help: string;
  readonly parameters: readonly { readonly label: string; readonly help: string }[];
  /** Index of the parameter under the caret; -1 past the last. */
  readonly active: number;
  readonly example: string;
}

function labelOf({ name, optional, repeats }: Parameter): string {
  const shown = repeats === true ? `${name}, …` : name;
  return optional === true ? `[${shown}]` : shown;
}

function helpOf({ help, type }: Parameter): string {
  return type.kind === 'choice' ? `${help}: ${type.choices.join(', ')}` : help;
}

/** Help on the innermost known call that the caret stands in; undefined outside of one. */
export function signatureAt(
  text: string,
  caret: number,
  catalogue: Catalogue,
): Signature | undefined {
  if (!text.startsWith('=') || caret < 1) return undefined;
  const { around } = caretAt(text, caret, { units: 'in', currency: 'USD' });
  const call = around.find(({ name }) => catalogue.has(name));
  const entry = call === undefined ? undefined : catalogue.get(call.name);
  if (call === undefined || entry === undefined) return undefined;
  return {
    name: entry.name,
    help: entry.help,
    parameters: entry.parameters.map((parameter) => ({
      label: labelOf(parameter),
      help: helpOf(parameter),
    })),
    active: parameterIndex(entry, call.argument) ?? -1,
    example: `${entry.example.formula} → ${entry.example.shows}`,
  };
}

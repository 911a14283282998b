import type { ChoiceOption, CompletionItem } from '../../extension/protocol/views.ts';

/** One line of the suggestion list. */
export interface Suggestion {
  readonly label: string;
  readonly detail: string;
  readonly mark: string;
  /** Replaces `start`–`end` of the text, or all of it for a choice. */
  readonly insert: string;
}

const marks: Readonly<Record<CompletionItem['kind'], string>> = {
  function: 'ƒ',
  column: '▥',
  row: '≡',
  word: 'a',
  unit: '′',
};

export function completionSuggestions(items: readonly CompletionItem[]): readonly Suggestion[] {
  return items.map(({ label, detail, kind, insert }) => ({
    label,
    detail,
    mark: marks[kind],
    insert,
  }));
}

function rankOf(option: ChoiceOption, words: readonly string[], typed: string): number {
  const label = option.label.toLowerCase();
  const value = option.value.toLowerCase();
  const all = `${value} ${label} ${option.detail.toLowerCase()}`;
  if (!words.every((word) => all.includes(word))) return -1;
  if (value === typed || label === typed) return 4;
  if (value.startsWith(typed) || label.startsWith(typed)) return 3;
  return label.includes(typed) || value.includes(typed) ? 2 : 1;
}

/** Options that hold every typed word, best first; all of them while nothing is typed. */
export function matchingChoices(
  options: readonly ChoiceOption[],
  text: string,
): readonly Suggestion[] {
  const typed = text.trim().toLowerCase();
  const words = typed.split(/\s+/).filter((word) => word !== '');
  return options
    .map((option) => ({ option, rank: rankOf(option, words, typed) }))
    .filter(({ rank }) => rank >= 0)
    .sort((one, other) => other.rank - one.rank)
    .map(({ option }) => ({
      label: option.label === '' ? option.value : option.label,
      detail: option.detail,
      mark: '',
      insert: option.value,
    }));
}

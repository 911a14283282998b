import { moneyChangeText } from '../../estimate/money.ts';
import { nothing, section, tag, type Html } from './html.ts';
import type { PaperGround, PaperSource } from './paper.ts';

/** What the client may choose instead, each by its difference of price alone; nothing where there is none. */
export function offeredOptions({ price }: PaperGround, { options = [] }: PaperSource): Html {
  if (options.length === 0) return nothing;
  const rows = options.map(({ name, note, change }) => {
    const text = change === 0 ? 'same price' : moneyChangeText(change, price.currency);
    const label = note === '' ? name : `${name}: ${note}`;
    return tag('tr', {}, tag('td', {}, label), tag('td', { class: 'n' }, text));
  });
  return section(
    'Options',
    tag('p', {}, 'Each instead of what is quoted above; the difference is on the total, with tax.'),
    tag('table', {}, tag('tbody', {}, ...rows)),
  );
}

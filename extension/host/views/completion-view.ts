import { completionsAt, signatureAt, type Snapshot } from '../../engine/index.ts';
import type { Question } from '../../protocol/messages.ts';
import type { CompletionView } from '../../protocol/views.ts';
import { engineCell } from '../addresses.ts';
import { shownValue } from './cell-view.ts';

type Asked = Question & { readonly ask: 'complete' };

const empty: CompletionView = { start: 0, end: 0, items: [], signature: undefined, preview: '' };

function previewOf(asked: Asked, snapshot: Snapshot): string {
  const result = snapshot.workbook.tryText(engineCell(asked.cell), asked.text);
  switch (result.state) {
    case 'value':
      return shownValue(result.value, asked.cell.column, snapshot.settings);
    case 'no-answer':
      return result.problem.message;
    case 'blank':
      return '';
  }
}

/** Names and functions that may stand at the caret, help on the call it is in, and what the text comes to. */
export function completionView(asked: Asked, snapshot: Snapshot): CompletionView {
  if (!asked.text.startsWith('=')) return empty;
  const scope = snapshot.workbook.scopeAt(engineCell(asked.cell));
  const found = completionsAt(asked.text, asked.caret, scope);
  return {
    start: found.start,
    end: found.end,
    items: found.items,
    signature: signatureAt(asked.text, asked.caret, scope.catalogue),
    preview: previewOf(asked, snapshot),
  };
}

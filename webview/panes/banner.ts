import type { JobView } from '../../extension/protocol/views.ts';
import { element, setHidden } from '../dom.ts';
import { button } from '../form.ts';
import { icon } from '../icons.ts';

const titles: Readonly<Record<JobView['state'], string>> = {
  ready: '',
  calculating: '',
  empty: '',
  'read-only': 'Read-only',
  conflicted: 'Merge conflict in this file',
  unreadable: 'This file cannot be read as a job',
};

/** Says why the grid takes no edits, with the way to the text. */
export class Banner {
  readonly root = element('div', {
    class: 'banner',
    data: { banner: '' },
    attributes: { role: 'status', hidden: '' },
  });

  paint(job: JobView): void {
    const title = titles[job.state];
    setHidden(this.root, title === '');
    this.root.dataset['banner'] = job.state;
    if (title === '') {
      this.root.replaceChildren();
      return;
    }
    const line = job.line > 0 ? ` (line ${String(job.line)})` : '';
    this.root.replaceChildren(
      icon(job.state === 'read-only' ? 'note' : 'warning'),
      element(
        'div',
        { class: 'banner-words' },
        element('strong', { text: title }),
        element('span', { text: `${job.message}${line}` }),
      ),
      button({
        action: 'open-as-text',
        text: 'Open as text',
        argument: String(job.line),
        look: job.state === 'read-only' ? 'secondary' : 'primary',
      }),
    );
  }
}

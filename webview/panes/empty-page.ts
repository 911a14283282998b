import type { JobView } from '../../extension/protocol/views.ts';
import { element } from '../dom.ts';
import { button } from '../form.ts';

/** What an empty job shows: kits to begin with, or a first row by hand. */
export class EmptyPage {
  readonly root = element('div', { class: 'empty-page', attributes: { hidden: '' } });

  paint(job: JobView): void {
    if (job.state !== 'empty') {
      this.root.replaceChildren();
      return;
    }
    this.root.replaceChildren(
      element('h2', { text: 'Nothing in this job yet' }),
      element('p', {
        text: 'A kit asks a few questions and writes the rows; what it writes is yours to change.',
      }),
      element(
        'ul',
        { class: 'kits' },
        ...job.kits.map((kit, index) =>
          element(
            'li',
            { class: 'kit' },
            element('h3', { text: kit.name }),
            element('p', { text: kit.help }),
            button({
              action: 'insert-kit',
              argument: kit.id,
              text: 'Use this kit',
              title: `Use the kit ${kit.name}`,
              look: index === 0 ? 'primary' : 'secondary',
            }),
          ),
        ),
      ),
      element(
        'p',
        {},
        element('button', {
          class: 'link',
          text: 'Begin with an empty grid instead',
          data: { action: 'start-blank' },
          attributes: { type: 'button' },
        }),
      ),
    );
  }
}

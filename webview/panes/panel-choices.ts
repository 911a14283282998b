import type {
  PanelChoice,
  PanelHand,
  PanelView,
  PanelWish,
  PictureKind,
  SkinScale,
} from '../../extension/protocol/panel-view.ts';
import { choiceList, fillChoices } from '../choice-list.ts';
import { element } from '../dom.ts';
import { button } from '../form.ts';

const pictures: readonly (PanelChoice & { readonly value: PictureKind })[] = [
  { value: 'plan', label: 'Plan' },
  { value: 'section', label: 'Section' },
  { value: 'skin', label: 'Skin' },
  { value: 'strip', label: 'Strip' },
];

type Colour = SkinScale['key'];

/** What a picture is of: base, picture, ring, hand and colours; and what can be done with it. */
export class PanelChoices {
  readonly root: HTMLElement;
  readonly #base = choiceList('Base', 'base');
  readonly #picture = choiceList('Picture', 'picture');
  readonly #ring = choiceList('Ring', 'ring');
  readonly #hand = choiceList('Hand', 'hand');
  readonly #colour = choiceList('Coloured by', 'colour');
  readonly #recolour: () => void;

  constructor(hooks: {
    readonly wish: (change: Partial<PanelWish>) => void;
    readonly recolour: () => void;
  }) {
    this.#recolour = hooks.recolour;
    const lists = [this.#base, this.#picture, this.#ring, this.#hand, this.#colour];
    this.root = element(
      'div',
      { class: 'panel-choices' },
      ...lists,
      element(
        'div',
        { class: 'panel-buttons' },
        button({ action: 'save-picture', text: 'Save picture…', icon: 'export', look: 'icon' }),
        button({
          action: 'panel-larger',
          text: 'Larger picture, or smaller again',
          icon: 'larger',
          look: 'icon',
        }),
      ),
    );
    this.root.addEventListener('change', (event) => {
      if (event.target === this.#colour) this.#recolour();
      else hooks.wish(this.#now());
    });
  }

  get colour(): Colour {
    return this.#colour.value === 'stretch' ? 'stretch' : 'height';
  }

  paint({ wish, bases, rings, hands, skin }: PanelView): void {
    fillChoices(this.#base, bases, wish.base);
    fillChoices(this.#picture, pictures, wish.picture);
    const ofRing = wish.picture === 'section' || wish.picture === 'strip';
    fillChoices(this.#ring, ofRing ? rings : [], wish.ring);
    fillChoices(this.#hand, hands, wish.hand);
    const scales = (skin?.scales ?? []).map(({ key, label }) => ({ value: key, label }));
    const before = this.#colour.value;
    const kept = scales.some(({ value }) => value === before);
    fillChoices(this.#colour, scales, kept ? before : (scales[0]?.value ?? ''));
  }

  #now(): Partial<PanelWish> {
    const ring = this.#ring.hidden ? {} : { ring: this.#ring.value };
    return {
      base: this.#base.value,
      picture: this.#picture.value as PictureKind,
      hand: (this.#hand.value === '' ? 'drawn' : this.#hand.value) as PanelHand,
      ...ring,
    };
  }
}

import type { SkinScale, SkinView } from '../../extension/protocol/panel-view.ts';
import { element, setAttribute } from '../dom.ts';
import { shaded, themeColours, type SkinColours } from './colours.ts';
import type { Size } from './fit.ts';
import { changedLook, skinScene, straightOn, type Look } from './skin-scene.ts';

const keyTurn = Math.PI / 24;
const keyZoom = 1.15;
const dragTurn = 0.01;

/** What each key does to the look: the skin follows it as it follows the pointer. */
const keys: Readonly<Record<string, Parameters<typeof changedLook>[1]>> = {
  ArrowLeft: { turn: -keyTurn },
  ArrowRight: { turn: keyTurn },
  ArrowUp: { tip: keyTurn },
  ArrowDown: { tip: -keyTurn },
  '+': { zoom: keyZoom },
  '=': { zoom: keyZoom },
  '-': { zoom: 1 / keyZoom },
};

/** Paints a skin on a canvas of this size in CSS pixels. */
export function paintSkin(
  canvas: HTMLCanvasElement,
  what: {
    readonly view: SkinView;
    readonly scale: SkinScale | undefined;
    readonly look: Look;
    readonly size: Size;
    readonly colours: SkinColours;
    readonly background?: string;
    readonly sharpness: number;
  },
): void {
  const { view, scale, look, size, colours, sharpness } = what;
  canvas.width = Math.round(size.width * sharpness);
  canvas.height = Math.round(size.height * sharpness);
  const brush = canvas.getContext('2d');
  if (brush === null) return;
  brush.setTransform(sharpness, 0, 0, sharpness, 0, 0);
  brush.clearRect(0, 0, size.width, size.height);
  if (what.background !== undefined) {
    brush.fillStyle = what.background;
    brush.fillRect(0, 0, size.width, size.height);
  }
  brush.lineJoin = 'round';
  for (const one of skinScene(view, scale, look, size)) {
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0, x2, y2] = one.at;
    brush.beginPath();
    brush.moveTo(x0, y0);
    brush.lineTo(x1, y1);
    if (one.kind === 'edge') {
      brush.strokeStyle = colours.edge;
      brush.lineWidth = 1.4;
      brush.stroke();
      continue;
    }
    brush.lineTo(x2 ?? x0, y2 ?? y0);
    brush.closePath();
    // Its own colour round it closes the hairlines between faces.
    brush.fillStyle = brush.strokeStyle = shaded(colours, one.share, one.light);
    brush.lineWidth = 0.7;
    brush.fill();
    brush.stroke();
  }
}

/** The skin in space: turned by dragging or with the arrows, drawn closer with + and −. */
export class SkinPicture {
  readonly root: HTMLElement;
  readonly #canvas = element('canvas', {
    class: 'skin-canvas',
    attributes: { tabindex: '0', role: 'img' },
  });
  readonly #probe = element('span', { class: 'skin-probe', attributes: { 'aria-hidden': 'true' } });
  #look: Look = straightOn;
  #view: SkinView | undefined;
  #scale: SkinScale | undefined;
  #size: Size = { width: 0, height: 0 };
  #frame: number | undefined;

  constructor() {
    this.root = element('div', { class: 'skin-picture' }, this.#canvas, this.#probe);
    this.#canvas.addEventListener('keydown', (event) => {
      this.#key(event);
    });
    this.#canvas.addEventListener('pointerdown', (event) => {
      this.#press(event);
    });
    this.#canvas.addEventListener(
      'wheel',
      (event) => {
        if (!event.ctrlKey && document.activeElement !== this.#canvas) return;
        event.preventDefault();
        this.#turn({ zoom: event.deltaY < 0 ? keyZoom : 1 / keyZoom });
      },
      { passive: false },
    );
    // Colours of a canvas do not follow the theme by themselves.
    const watch = new MutationObserver(() => {
      this.#later();
    });
    watch.observe(document.documentElement, { attributes: true, attributeFilter: ['style'] });
    watch.observe(document.body, { attributes: true, attributeFilter: ['class'] });
  }

  /** Shows a skin coloured by one of its scales. */
  paint(view: SkinView, scale: SkinScale | undefined, title: string, size: Size): void {
    this.#view = view;
    this.#scale = scale;
    this.#size = size;
    const by = scale === undefined ? '' : `, coloured by ${scale.label.toLowerCase()}`;
    setAttribute(
      this.#canvas,
      'aria-label',
      `${title}${by}. Arrow keys turn it, plus and minus zoom, Home turns it back.`,
    );
    this.#canvas.style.setProperty('width', `${String(size.width)}px`);
    this.#canvas.style.setProperty('height', `${String(size.height)}px`);
    this.#later();
  }

  get look(): Look {
    return this.#look;
  }

  /** PNG of what is seen, on white, larger than on screen. */
  png(longest: number): string {
    const view = this.#view;
    if (view === undefined) return '';
    const { width, height } = this.#size;
    const canvas = document.createElement('canvas');
    paintSkin(canvas, {
      view,
      scale: this.#scale,
      look: this.#look,
      size: this.#size,
      colours: { ...themeColours(this.#probe), edge: 'black' },
      background: 'white',
      sharpness: longest / Math.max(1, width, height),
    });
    return canvas.toDataURL('image/png').replace(/^[^,]*,/, '');
  }

  #later(): void {
    if (this.#frame !== undefined) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = undefined;
      this.#paint();
    });
  }

  #paint(): void {
    const view = this.#view;
    if (view === undefined || this.#size.width === 0) return;
    paintSkin(this.#canvas, {
      view,
      scale: this.#scale,
      look: this.#look,
      size: this.#size,
      colours: themeColours(this.#probe),
      sharpness: window.devicePixelRatio,
    });
  }

  #turn(by: Parameters<typeof changedLook>[1]): void {
    this.#look = changedLook(this.#look, by);
    this.#later();
  }

  #key(event: KeyboardEvent): void {
    const by = keys[event.key];
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Home') this.#look = straightOn;
    else if (by === undefined) return;
    this.#turn(by ?? {});
    event.preventDefault();
    event.stopPropagation();
  }

  #press(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.#canvas.setPointerCapture(event.pointerId);
    let last = { x: event.clientX, y: event.clientY };
    const move = (moved: PointerEvent): void => {
      const [dx, dy] = [moved.clientX - last.x, moved.clientY - last.y];
      last = { x: moved.clientX, y: moved.clientY };
      this.#turn({ turn: dx * dragTurn, tip: -dy * dragTurn });
    };
    this.#canvas.addEventListener('pointermove', move);
    this.#canvas.addEventListener(
      'lostpointercapture',
      () => {
        this.#canvas.removeEventListener('pointermove', move);
      },
      { once: true },
    );
  }
}

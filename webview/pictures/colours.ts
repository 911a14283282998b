/** Red, green and blue, 0 to 255. */
export type Colour = readonly [red: number, green: number, blue: number];

/** Colours that the skin is painted with, from the theme. */
export interface SkinColours {
  /** From the least to the most of the scale. */
  readonly heat: readonly Colour[];
  readonly edge: string;
}

/** Numbers of a computed colour: `rgb(1, 2, 3)`, or `color(srgb 0.1 0.2 0.3)` where it was mixed. */
export function readColour(text: string): Colour {
  const numbers = [...text.matchAll(/-?\d*\.?\d+(?:e-?\d+)?/g)].map(([one]) => Number(one));
  const [red = 128, green = 128, blue = 128] = numbers;
  const whole = text.startsWith('color(') ? 255 : 1;
  return [red * whole, green * whole, blue * whole];
}

const names = ['--heat-low', '--heat-middle', '--heat-high'];

/** The theme's colours as they are now, asked of a probe that the style sheet colours. */
export function themeColours(probe: HTMLElement): SkinColours {
  const heat = names.map((name) => {
    probe.style.setProperty('color', `var(${name})`);
    return readColour(getComputedStyle(probe).color);
  });
  probe.style.removeProperty('color');
  return { heat, edge: getComputedStyle(probe).color };
}

/** A colour of the scale in this light. */
export function shaded({ heat }: SkinColours, share: number, light: number): string {
  const place = share * (heat.length - 1);
  const below = Math.min(heat.length - 1, Math.floor(place));
  const [from, to] = [heat[below], heat[Math.min(heat.length - 1, below + 1)]];
  if (from === undefined || to === undefined) return 'gray';
  const dim = 0.5 + 0.5 * light;
  const mixed = from.map((one, index) =>
    Math.round((one + ((to[index] ?? one) - one) * (place - below)) * dim),
  );
  return `rgb(${mixed.join(', ')})`;
}

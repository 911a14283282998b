import { describe, expect, test } from 'vitest';
import { readColour, shaded } from '../../webview/pictures/colours.ts';
import { arrowHead, fitted, pathOf } from '../../webview/pictures/fit.ts';
import { changedLook, skinScene, straightOn } from '../../webview/pictures/skin-scene.ts';
import { fakeSkin } from './page/fake-panel.ts';

const place = { width: 400, height: 300 };
const [height, stretch] = fakeSkin.scales;
const fromAbove = { turn: 0, tip: 0, zoom: 1 };

describe('skinScene', () => {
  test('every triangle is painted once, the furthest first', () => {
    const scene = skinScene(fakeSkin, height, straightOn, place);
    expect(scene.filter(({ kind }) => kind === 'face')).toHaveLength(4);
    const depths = scene.map(({ depth }) => depth);
    expect(depths).toEqual(depths.toSorted((one, two) => one - two));
  });

  test('seen from above the panel is as it is drawn in plan, y up', () => {
    const [edge] = skinScene(fakeSkin, height, fromAbove, place).filter(
      ({ kind }) => kind === 'edge',
    );
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = edge?.at ?? [];
    expect(x1).toBeGreaterThan(x0);
    expect(y0).toBeCloseTo(y1, 9);
    expect(y0).toBeGreaterThan(place.height / 2);
  });

  test.each([0, 0.5, 1, Math.PI / 2])('it stays in its place however it is tipped (%d)', (tip) => {
    for (const turn of [0, 0.7, 2, 4]) {
      for (const { at } of skinScene(fakeSkin, height, { turn, tip, zoom: 1 }, place)) {
        at.forEach((px, index) => {
          expect(px).toBeGreaterThanOrEqual(0);
          expect(px).toBeLessThanOrEqual(index % 2 === 0 ? place.width : place.height);
        });
      }
    }
  });

  test('colours follow the scale: all faces of the tent are a third up', () => {
    for (const scale of [height, stretch]) {
      const faces = skinScene(fakeSkin, scale, straightOn, place).filter(
        (one) => one.kind === 'face',
      );
      for (const { share } of faces) expect(share).toBeCloseTo(1 / 3, 6);
    }
  });
});

describe('changedLook', () => {
  test('it tips no further than from the edge, and zooms within what shows something', () => {
    expect(changedLook(straightOn, { tip: 9 }).tip).toBeCloseTo(Math.PI / 2, 9);
    expect(changedLook(straightOn, { zoom: 1000 }).zoom).toBe(8);
    expect(changedLook(straightOn, { zoom: 0.001 }).zoom).toBe(0.5);
    expect(changedLook(straightOn, { turn: 1 }).turn).toBeCloseTo(straightOn.turn + 1, 9);
  });
});

describe('colours', () => {
  test('computed colours are read in both ways that browsers write them', () => {
    expect(readColour('rgb(10, 20, 30)')).toEqual([10, 20, 30]);
    expect(readColour('color(srgb 0.5 1 0)')).toEqual([127.5, 255, 0]);
  });

  test('the ends of the scale are its own colours in full light', () => {
    const colours = {
      heat: [
        [0, 0, 200],
        [200, 200, 0],
        [200, 0, 0],
      ] as const,
      edge: 'black',
    };
    expect(shaded(colours, 0, 1)).toBe('rgb(0, 0, 200)');
    expect(shaded(colours, 1, 1)).toBe('rgb(200, 0, 0)');
    expect(shaded(colours, 0.25, 1)).toBe('rgb(100, 100, 100)');
    expect(shaded(colours, 1, 0)).toBe('rgb(100, 0, 0)');
  });
});

describe('fitted', () => {
  const box = { left: -10, right: 10, bottom: -5, top: 5 };
  const none = { left: 0, right: 0, top: 0, bottom: 0 };

  test('the narrower side decides, and the picture is in the middle', () => {
    const fit = fitted(box, { width: 200, height: 400 }, none);
    expect(fit.scale).toBe(10);
    expect([fit.x(0), fit.y(0)]).toEqual([100, 200]);
    expect(fit.y(5)).toBeLessThan(fit.y(-5));
  });

  test('room on one side moves the picture to the other', () => {
    const fit = fitted(box, { width: 240, height: 400 }, { ...none, left: 40 });
    expect(fit.x(-10)).toBeCloseTo(40, 9);
  });

  test('paths are closed where the line is, and an arrow has a head at its end', () => {
    const fit = fitted(box, { width: 200, height: 100 }, none);
    expect(pathOf([-10, -5, 10, 5], true, fit)).toBe('M0 100L200 0Z');
    expect(arrowHead([-10, 0, 10, 0], fit)).toMatch(/^M200 50L191 /);
    expect(arrowHead([1, 1, 1, 1], fit)).toBe('');
  });
});

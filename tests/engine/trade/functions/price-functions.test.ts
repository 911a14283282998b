import { describe, expect, test } from 'vitest';
import { numberOf, shown } from '../../../helpers/trade-call.ts';

describe('learning by the average', () => {
  test('a rate under one half would leave less than no time for the second unit', () => {
    expect(shown('TIME.LEARN(4h, 49%, 2, average)')).toBe(
      'TIME.LEARN: at a rate of 49 % of the average the next unit would take less than no time; use a rate of at least 50 %, or the model unit.',
    );
    expect(shown('TIME.LEARNTOTAL(4h, 20%, 2, average)')).toContain('or the model unit');
    expect(shown('TIME.LEARN(4h, 50%, 2, average)')).toBe('0 min');
    expect(shown('TIME.LEARN(4h, 40%, 2, unit)')).toBe('1 h 36 min');
  });
});

describe('time and price functions', () => {
  test.each([
    ['TIME.THREEPOINT(10min, 5min, 30min)', 'they must not fall'],
    ['TIME.THREEPOINT(10min, 15min, 12min)', 'they must not fall'],
    ['TIME.LEARN(4h, 0%, 2, unit)', 'rate is 0 %'],
    ['TIME.LEARN(4h, 85%, 0, unit)', 'must be a whole number from 1'],
    ['TIME.LEARN(4h, 85%, 1.5, unit)', 'must be a whole number from 1'],
    ['TIME.LEARN(4h, 85%, 2, best)', 'TIME.LEARN needs model'],
    ['TIME.LEARNTOTAL(4h, 85%, 1000000, unit)', 'more than the 100000 this can add up'],
    ['PRICE.FROMMARGIN(100USD, 100%)', 'the margin is 100 %'],
    ['PRICE.FROMMARGIN(100USD, 20)', 'the margin is 2000 %'],
    ['MARKUP.FROMMARGIN(-5%)', 'the margin is -5 %'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('the second of a pair takes 85 % of the first by unit and 70 % by average', () => {
    expect(numberOf('TIME.LEARN(100min, 85%, 2, unit)', 'min')).toBeCloseTo(85, 9);
    expect(numberOf('TIME.LEARN(100min, 85%, 2, average)', 'min')).toBeCloseTo(70, 9);
  });

  test('where nothing is learnt every unit takes the same', () => {
    for (const model of ['unit', 'average']) {
      expect(numberOf(`TIME.LEARNTOTAL(10min, 100%, 7, ${model})`, 'min')).toBeCloseTo(70, 9);
    }
  });

  test('a margin of nothing leaves the cost', () => {
    expect(shown('PRICE.FROMMARGIN(100USD, 0%)')).toBe('100.00 USD');
  });
});

describe('box functions', () => {
  test.each([
    ['BOX.VOLUME(45l, 0.65, 0.6)', 'a closed box only raises the Q; 0.6 is not above'],
    ['BOX.VOLUME(45l, 0.65, 0.65)', 'a closed box only raises the Q'],
    ['BOX.QTC(45l, 0.65, 0l)', 'volume is 0 floz'],
    ['BOX.F3(0Hz, 45l, 0.65, 30l)', 'fs is 0 Hz'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('the volume that a Q asks for gives that Q', () => {
    const volume = numberOf('BOX.VOLUME(45l, 0.4, 0.707)', 'l');
    expect(numberOf(`BOX.QTC(45l, 0.4, ${String(volume)} l)`)).toBeCloseTo(0.707, 9);
  });
});

describe('aim functions', () => {
  test.each([
    ['AIM.TILT(30in, 24in, 0in)', 'the ear is 0 in out of the panel'],
    ['AIM.OFFAXIS(30in, 24in, -1in, 0deg, 0deg)', 'the ear is -1 in out'],
    ['AIM.TURN(30in, 24in, 14in, 30in, 24in, -4in)', 'the ear is -4 in out'],
    ['AIM.TILT(30in, 24in, 14in, 30in)', 'needs x2, y2 and z2; y2 is missing'],
    ['DRIVER.OFFAXISLOSS(0mm, 2kHz, 30deg)', 'cone is 0 in'],
    ['DRIVER.OFFAXISLOSS(130m, 20kHz, 30deg)', 'more than the 100 up to which a flat piston'],
    ['DRIVER.OFFAXISLOSS(130mm, 2kHz, 90deg)', 'at least 0 deg and below 90 deg'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  // Ears at (30, 24, 14) and (30, 24, 44); worked by hand.
  test('between two ears both are 14.426° off the axis', () => {
    const tilt = numberOf('AIM.TILT(30in, 24in, 14in, 30in, 24in, 44in)', 'deg');
    const turn = numberOf('AIM.TURN(30in, 24in, 14in, 30in, 24in, 44in)', 'deg');
    expect(tilt).toBeCloseTo(55.552, 3);
    expect(turn).toBeCloseTo(90 - 38.6598, 4);
    for (const z of ['14in', '44in']) {
      const aim = `${String(tilt)}deg, ${String(turn)}deg`;
      expect(numberOf(`AIM.OFFAXIS(30in, 24in, ${z}, ${aim})`, 'deg')).toBeCloseTo(14.426, 3);
    }
  });

  test('one ear alone is on the axis of a driver that is aimed at it', () => {
    expect(numberOf('AIM.TILT(30in, 24in, 14in)', 'deg')).toBeCloseTo(69.978, 3);
    expect(numberOf('AIM.TILT(30in, 24in, 44in)', 'deg')).toBeCloseTo(41.1259, 4);
    const off = numberOf('AIM.OFFAXIS(30in, 24in, 44in, 25deg, 51.3402deg)', 'deg');
    expect(off).toBeCloseTo(16.126, 3);
  });

  test('on the axis nothing is lost, further off never gains up to the first null', () => {
    expect(shown('DRIVER.OFFAXISLOSS(130mm, 2kHz, 0deg)')).toBe('0');
    const levels = [10, 20, 30, 40, 50].map((angle) =>
      numberOf(`DRIVER.OFFAXISLOSS(130mm, 2kHz, ${String(angle)}deg)`),
    );
    expect([...levels].sort((a, b) => b - a)).toEqual(levels);
  });
});

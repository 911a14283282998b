import { describe, expect, test } from 'vitest';
import { answered, numberOf } from '../helpers/calculated.ts';

describe('aim from a flat door: ear 30 in to the rear, 28 in up, 24 in out (geometry)', () => {
  test('59.679° off the axis, 47.539 in away, 43.03° above rearward', () => {
    expect(numberOf('AIM.TILT(30in, 28in, 24in)', 'deg')).toBeCloseTo(59.679, 3);
    expect(numberOf('AIM.OFFAXIS(30in, 28in, 24in, 0deg, 0deg)', 'deg')).toBeCloseTo(59.679, 3);
    expect(numberOf('AIM.DISTANCE(30in, 28in, 24in)', 'in')).toBeCloseTo(47.539, 3);
    // A ring turns from straight up towards the rear, so 43.03° above rearward is 46.97° of turn.
    expect(90 - numberOf('AIM.TURN(30in, 28in, 24in)', 'deg')).toBeCloseTo(43.03, 2);
  });

  test('leaning 15° that way leaves 44.68°', () => {
    const turn = `${String(numberOf('AIM.TURN(30in, 28in, 24in)', 'deg'))}deg`;
    expect(numberOf(`AIM.OFFAXIS(30in, 28in, 24in, 15deg, ${turn})`, 'deg')).toBeCloseTo(44.68, 2);
  });

  test('full aim would make a 7 in tube rise 11.97 in, so partial aim is the usual case', () => {
    const tilt = `${String(numberOf('AIM.TILT(30in, 28in, 24in)', 'deg'))}deg`;
    const depth = numberOf(`RING.LEAST(7in, ${tilt}, 0in, round_tube)`, 'in');
    const high = numberOf(`RING.HIGH(${String(depth)} in, 7in, ${tilt}, round_tube)`, 'in');
    expect(high).toBeCloseTo(11.97, 2);
  });
});

describe('a flat round piston (J. Eargle, “Electroacoustical Reference Data”, ch. 35: 2·J1(x)/x)', () => {
  test.each([
    ['30deg', -1.586],
    ['45deg', -3.281],
  ])('130 mm at 2 kHz, %s: %d dB', (angle, level) => {
    const worked = numberOf(`DRIVER.OFFAXISLOSS(130mm, 2kHz, ${angle})`);
    expect(Math.abs(worked - level)).toBeLessThanOrEqual(0.01);
  });

  test('130 mm at 5 kHz has its first null at 40.09°', () => {
    const at = (angle: number) => numberOf(`DRIVER.OFFAXISLOSS(130mm, 5kHz, ${String(angle)}deg)`);
    expect(at(40.09)).toBeLessThan(-50);
    expect(at(40.04)).toBeGreaterThan(at(40.09));
    expect(at(40.14)).toBeGreaterThan(at(40.09));
  });

  test('one wavelength across: −8.60 dB at 55°, where a manual draws about −10 (Sound System Design Reference Manual, p. 27)', () => {
    const frequency = `${String(343.2 / 0.13)} Hz`;
    const level = numberOf(`DRIVER.OFFAXISLOSS(130mm, ${frequency}, 55deg)`);
    expect(level).toBeCloseTo(-8.6, 1);
    expect(Math.abs(level + 10)).toBeLessThanOrEqual(1.5);
  });
});

describe('closed boxes (ohmicaudio.com, worked example; formulas: diysubwoofers.org)', () => {
  test('Vas 45 l, Qts 0.65, Qtc 0.707: 245.80 l, printed 246', () => {
    const volume = numberOf('BOX.VOLUME(45l, 0.65, 0.707)', 'l');
    expect(Math.abs(volume - 245.8)).toBeLessThanOrEqual(0.05);
    expect(Math.round(volume)).toBe(246);
  });

  test('in 30 l: Qtc 1.0277, printed 1.03', () => {
    expect(numberOf('BOX.QTC(45l, 0.65, 30l)')).toBeCloseTo(1.0277, 4);
  });

  test('in 30 l with Fs 35 Hz: resonance 55.340 Hz, printed 55.4', () => {
    const resonance = numberOf('BOX.RESONANCE(35Hz, 45l, 30l)', 'Hz');
    expect(resonance).toBeCloseTo(55.34, 2);
    expect(Math.abs(resonance - 55.4)).toBeLessThanOrEqual(0.1);
  });

  test('in 30 l with Fs 35 Hz: 3 dB down at 42.993 Hz, printed 43', () => {
    expect(numberOf('BOX.F3(35Hz, 45l, 0.65, 30l)', 'Hz')).toBeCloseTo(42.993, 2);
  });
});

describe('closed boxes that there are not, and misprints (ohmicaudio.com; formulas: diysubwoofers.org)', () => {
  test('a driver of Qts 0.65 has no box of Qtc 0.6', () => {
    expect(answered('BOX.VOLUME(45l, 0.65, 0.6)')).toContain(
      '0.6 is not above the driver’s own 0.65',
    );
    expect(answered('BOX.VOLUME(45l, 0.65, 0.65)')).toContain('ask for more than 0.65');
  });

  test('known misprint: flat down to its resonance is Qtc 0.7071, not the 0.577 of one version', () => {
    const share = (qtc: number): number => {
      const box = `BOX.VOLUME(45l, 0.4, ${String(qtc)})`;
      const f3 = numberOf(`BOX.F3(35Hz, 45l, 0.4, ${box})`, 'Hz');
      return f3 / numberOf(`BOX.RESONANCE(35Hz, 45l, ${box})`, 'Hz');
    };
    expect(share(Math.SQRT1_2)).toBeCloseTo(1, 9);
    expect(share(0.577)).toBeGreaterThan(1.25);
  });

  test('known misprint: Qtc 1.03 is not overdamped; it peaks and reaches below its resonance', () => {
    const f3 = numberOf('BOX.F3(35Hz, 45l, 0.65, 30l)', 'Hz');
    expect(f3 / numberOf('BOX.RESONANCE(35Hz, 45l, 30l)', 'Hz')).toBeCloseTo(0.777, 3);
  });
});

import { describe, expect, it } from 'vitest';
import { decideText } from './weighing.js';

// By hand. What is written once is done once: the price in a case is that of the option with what turned up written into it.
const text = (option: string) => `steelyard 1
shop "S"
  rate bench 100.00
part bolts "Head bolts" 50.00 new
labour head "Head off and on" 5 h
  uses bolts
labour plane "Face the head" 2 h
tool puller "Puller" 40.00
labour pull "Pull the liner" 1 h
  needs puller
option one "One"
${option}`;

const average = (option: string) => decideText(text(option)).of('one').average;

describe('what a chance brings', () => {
  it('is paid on average where the option does not have it', () => {
    // 0.5 × (5 h × 100 + 50)
    expect(average('  labour "Look" 1 h\n  chance a "A" 50%\n    do head\n')).toBeCloseTo(100 + 0.5 * 550, 9);
  });

  it('is not paid again where the option has it anyway', () => {
    expect(average('  do head\n  chance a "A" 50%\n    do head, plane\n')).toBeCloseTo(550 + 0.5 * 200, 9);
    expect(average('  do head\n  chance a "A" 50%\n    fit bolts\n')).toBeCloseTo(550, 9);
  });

  it('is paid once where two chances bring it, if either happens', () => {
    // Either of two that know nothing of each other: 1 − 0.5 × 0.5.
    expect(average('  labour "Look" 1 h\n  chance a "A" 50%\n    do head\n  chance b "B" 50%\n    do head\n')).toBeCloseTo(100 + 0.75 * 550, 9);
    expect(average('  labour "Look" 1 h\n  chance a "A" 50%\n    do pull\n  chance b "B" 50%\n    do pull\n')).toBeCloseTo(100 + 0.75 * 140, 9);
  });

  it('is paid again where it comes back', () => {
    expect(average('  do head\n  chance a "A" 50% comeback\n    do head\n')).toBeCloseTo(550 + 0.5 * 550, 9);
  });

  it('takes its time once', () => {
    const days = (option: string) => decideText(text(option)).of('one').risk?.days.mean;
    const twice = '  chance a "A" 100%\n    do head\n  chance b "B" 100%\n    do head\n';
    const once = '  chance a "A" 100%\n    do head\n';
    // 31 h and 5 h are five days of eight hours; 5 h more would be a sixth.
    for (const chances of [once, twice]) expect(days(`  labour "Look" 31 h\n${chances}`)).toBe(5);
    for (const chances of [once, twice]) expect(days(`  labour "Look" 31 h\n  do head\n${chances}`)).toBe(5);
  });
});

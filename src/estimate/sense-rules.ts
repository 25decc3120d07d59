import type { Rule } from '../language/index.js';
import { clip } from '../vocabulary/index.js';

// What can be read, and can't be meant, or has no effect where it stands.

const shop = 'steelyard 1\nshop "S"\n  rate bench 100.00\n';

export const workdayImpossible: Rule<undefined> = {
  code: 'workday-impossible', family: 'job', severity: 'error', title: 'A working day that no day holds',
  message: () => ({ what: 'A working day has more than 0 h, and 24 h at most.', why: 'Hours of work become days by it, so every ready date would be wrong.', instead: 'Write the hours that one person works on a day, such as workday 8 h.' }),
  example: 'steelyard 1\nshop "S"\n  workday «25 h»\n',
};

export const closedAllWeek: Rule<undefined> = {
  code: 'closed-all-week', family: 'job', severity: 'error', title: 'A shop that is never open',
  message: () => ({ what: 'With this day the shop is closed on all seven days of the week.', why: 'No work could be planned, and no day can be said on which a vehicle is ready.', instead: 'Leave out the days on which the shop works.' }),
  example: 'steelyard 1\nshop "S"\n  closed monday, tuesday, wednesday, thursday, friday, saturday, «sunday»\n',
};

export const taxTooHigh: Rule<{ readonly written: string }> = {
  code: 'tax-too-high', family: 'money', severity: 'warning', title: 'A tax that is far too high',
  message: ({ written }) => ({ what: `A tax of ${clip(written)} % is more than half of what is sold.`, why: 'A decimal point has probably slipped, and every total is too high by it.', instead: 'Look at the rate again; write it as in tax sales 8.25% on parts.' }),
  example: 'steelyard 1\nshop "S"\n  tax sales «825%» on parts\n',
};

export const quantityOfNothing: Rule<undefined> = {
  code: 'quantity-of-nothing', family: 'money', severity: 'error', title: 'None of something',
  message: () => ({ what: 'This counts 0 of what the line is about.', why: 'It would stand on the quote at no charge, so the total is too low.', instead: 'Write how many there are, as in 2 at 12.50, or take out the line.' }),
  example: `${shop}part bolt "Head bolt" «0» at 5.85 new\n`,
};

export const apartTooLate: Rule<{ readonly apart: string; readonly takes: string }> = {
  code: 'apart-too-late', family: 'job', severity: 'warning', title: 'Apart after the job is over',
  message: ({ apart, takes }) => ({ what: `Things are apart after ${clip(apart)} h, but the whole job takes ${clip(takes)} h.`, why: 'The rest waits for parts and outside work; with no rest nothing waits, and the ready date is too early.', instead: 'Write fewer hours than the job takes, such as apart after 3 h.' }),
  example: `${shop}labour head "Rear head" 5 h\n  apart after «9 h»\n`,
};

export const afterItself: Rule<{ readonly name: string }> = {
  code: 'after-itself', family: 'names', severity: 'error', title: 'A line that waits for itself',
  message: ({ name }) => ({ what: `${clip(name)} is to wait for ${clip(name)}, which is this line itself.`, why: 'It could never start, so the calendar leaves out what is said here.', instead: 'Name the work that comes before it, or remove the after.' }),
  example: `${shop}labour seal "Front seal" 2 h\n  after «seal»\n`,
};

export const coreLosesMore: Rule<{ readonly less: string; readonly charge: string }> = {
  code: 'core-loses-more', family: 'money', severity: 'warning', title: 'A core that loses more than its charge',
  message: ({ less, charge }) => ({ what: `What the refund loses comes to ${less}, and the core charge is ${charge}.`, why: 'Nothing comes back then, and no more than the charge can be lost.', instead: 'Correct one of the figures behind core, less and keeps; where nothing comes back, write less with the whole charge.' }),
  example: `${shop}part starter "Starter" 180.00 rebuilt\n  core 60.00 less 40.00\n    keeps "Solenoid" less «25.00»\n`,
};

export const resaleWithoutLasts: Rule<undefined> = {
  code: 'resale-without-lasts', family: 'money', severity: 'warning', title: 'A resale price without a time',
  message: () => ({ what: 'Nothing says how long the vehicle lasts until it brings this.', why: 'It lowers what the option costs in each month of service, and without a time it has no effect at all.', instead: 'Write the time below the option, such as lasts 36 mo, or remove resale.' }),
  example: `${shop}option repair "Repair the head"\n  labour "Rear head" 8 h\n  resale «2400.00»\n`,
};

export const wayAndInCar: Rule<undefined> = {
  code: 'way-and-in-car', family: 'job', severity: 'error', title: 'In the car, and with a way in',
  message: () => ({ what: 'in-car pins the engine in its place, and the line names a way in as well.', why: 'Both can’t be: the way in would be opened and paid, and in-car has no effect.', instead: 'Remove one of them.' }),
  example: `${shop}access raised "Engine raised"\n  remove 1 h\n  refit 1 h\noption repair "Repair"\n  labour "Rear head" 8 h\n  way raised, «in-car»\n`,
};

export const chanceInEveryCase: Rule<undefined> = {
  code: 'chance-in-every-case', family: 'money', severity: 'warning', title: 'A chance of 100 %',
  message: () => ({ what: 'This happens in every case.', why: 'What is certain is no chance: the quote leaves it out, and promises less than will be paid.', instead: 'Write what it takes into the option or the job itself, or write how likely it is: chance cracked "The head is cracked" 12%' }),
  example: `${shop}option repair "Repair the head"\n  labour "Rear head" 8 h\n  chance cracked "The head is cracked" «100%»\n    part "Bare head" 690.00 used\n`,
};

export const inspectForNothing: Rule<undefined> = {
  code: 'inspect-for-nothing', family: 'money', severity: 'warning', title: 'An inspection without price and hours',
  message: () => ({ what: 'This inspection says neither what it costs nor how long it takes.', why: 'It is weighed as free, so it is worth doing whenever it could change the choice.', instead: 'Write its price, its hours or both: inspect dye "Dye test" 40.00 0.5 h. Where no charge is made, write 0.00.' }),
  example: `${shop}option repair "Repair the head"\n  labour "Rear head" 8 h\n  chance cracked "The head is cracked" 12%\n    part "Bare head" 690.00 used\n«inspect dye "Dye test"»\n  finds cracked 90%\n`,
};

export const wronglyAsOften: Rule<{ readonly shows: string; readonly wrongly: string }> = {
  code: 'wrongly-as-often', family: 'money', severity: 'warning', title: 'An inspection that tells nothing',
  message: ({ shows, wrongly }) => ({ what: `It shows this in ${clip(shows)} of 100 cases where it is so, and in ${clip(wrongly)} of 100 where it is not.`, why: shows === wrongly ? 'What is shown as often wrongly as rightly tells nothing.' : 'What is shown more often wrongly than rightly tells the opposite; the figures have probably changed places.', instead: shows === wrongly ? 'Leave the line out, or write how often it shows this rightly, and behind wrongly how often not: finds cracked 90% wrongly 5%' : 'Write the rarer one behind wrongly: finds cracked 90% wrongly 5%' }),
  example: `${shop}option repair "Repair the head"\n  labour "Rear head" 8 h\n  chance cracked "The head is cracked" 12%\n    part "Bare head" 690.00 used\ninspect dye "Dye test" 40.00\n  finds cracked 50% wrongly «60%»\n`,
};

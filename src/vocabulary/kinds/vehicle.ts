import { defineKind, led } from '../kind.js';
import { choice, distance, money, monthOrDate, runSuchAs, textSuchAs } from '../values.js';
import { year } from '../whole-numbers.js';
import { note } from './note.js';

export const vehicle = defineKind({
  word: 'vehicle',
  says: 'The vehicle in the bay.',
  example: 'vehicle "2013 Harrow Pilgrim 3.0 V6, transverse"\n  vin 1M8GDM9AXKP042788\n  engine "3.0 V6, two camshafts a bank"\n  built 2012-11\n  odometer 131400 mi\n  worth 7900.00\n  unrepaired 1900.00\n  downtime 42.00',
  title: 'required',
  titleSays: 'year, make, model and engine in words',
  fields: {
    vin: led('vin', runSuchAs('1M8GDM9AXKP042788'), 'Vehicle identification number.'),
    engine: led('engine', textSuchAs('3.0 V6, two camshafts a bank'), 'The engine in words.'),
    built: led('built', monthOrDate, 'When it was built: a month or a date.'),
    modelYear: led('model year', year, 'Its model year, where a coverage asks for it; read from the VIN where that tells.'),
    odometer: led('odometer', distance, 'What the odometer shows.'),
    worth: led('worth', money, 'What it is worth when it runs; an option may say otherwise.'),
    unrepaired: led('unrepaired', money, 'What it brings as it stands. Selling it so is then weighed beside the options, with the work that every option does first; and it counts as put in, where a cost in each month is worked out.'),
    downtime: led('downtime', money, 'What a day without it costs the customer, such as a hire car; shown apart from the quote.'),
    refrigerant: led('refrigerant', choice('yes or no', { yes: 'Its air conditioning holds refrigerant.', no: 'It has none.' }), 'Whether there is refrigerant in its air conditioning: yes or no.'),
  },
  children: [note],
});

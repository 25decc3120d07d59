/** A small shop with round figures, and a tear-down before two ways out. The sums are done by hand in the tests. */
export const worked = `steelyard 1
shop "Invented Bay"
  currency USD
  workday 8 h
  technicians 1
  rate bench 100.00
  tax sales 10% on parts by invoice
  fee supplies "Supplies" 5% of labour cap 30.00
estimate "E-7"
  written 2026-11-24
  start 2026-11-30
  answer 2 d
vehicle "Van"
  worth 5000.00
  unrepaired 500.00
access front-off "Front off"
  remove 2 h
  refit 3 h
  part "Seal" 10.00 new arrives 1 d
  sublet "Refill" 40.00
access out "Engine out"
  remove 5 h
  refit 6 h
labour diagnosis "Diagnosis" 1 h done first
labour strip "Strip the front"
  takes 4 h with front-off
  takes 1 h with out
part bolts "Bolts" 8 at 5.00 new arrives 3 d
labour head "Head"
  takes 5 h with front-off
  uses bolts
labour swap "Swap" 7 h with out
stage tear-down "Take the front apart"
  do strip
  opens front-off
  put back 3.5 h
  destroys bolts
option rebuild "Rebuild"
  do diagnosis, head
option used "Used engine"
  do diagnosis, swap
`;

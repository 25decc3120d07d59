import type { Check } from './check.js';
import { halfCheck } from './access-half.js';
import { waitsCheck } from './all-work-waits.js';
import { lateCheck } from './authorised-late.js';
import { beltWithoutPump } from './belt-without-pump.js';
import { billedCheck } from './billed-above-authorised.js';
import { closedCheck } from './closed-unauthorised.js';
import { builtCheck } from './built-after-written.js';
import { chanceDoneCheck } from './chance-of-what-is-done.js';
import { consideredCheck } from './considered-and-done.js';
import { coreCloseCheck } from './core-close.js';
import { coreLateCheck } from './core-late.js';
import { worthCheck } from './dearer-than-worth.js';
import { debrisCheck } from './debris-not-followed.js';
import { debrisWithoutBearings } from './debris-without-bearings.js';
import { engineOutWithoutRefrigerant } from './engine-out-without-refrigerant.js';
import { engineWithoutCoolant } from './engine-without-coolant.js';
import { engineWithoutFilter } from './engine-without-filter.js';
import { engineWithoutOil } from './engine-without-oil.js';
import { engineWithoutSwap } from './engine-without-swap.js';
import { findingCheck } from './finding-unanswered.js';
import { findsCheck } from './finds-in-no-option.js';
import { firstCheck } from './first-left-out.js';
import { fittedCheck } from './fitted-and-brought.js';
import { headWithoutBolts } from './head-without-bolts.js';
import { headWithoutCrackTest } from './head-without-crack-test.js';
import { headWithoutFlatness } from './head-without-flatness.js';
import { headWithoutGasket } from './head-without-gasket.js';
import { keepCheck } from './keep-without-less.js';
import { authorisedCheck } from './more-than-authorised.js';
import { backCheck } from './more-back-than-paid.js';
import { startCheck } from './no-start.js';
import { noTax } from './no-tax.js';
import { noValid } from './no-valid.js';
import { noWorkday } from './no-workday.js';
import { oneCheck } from './one-option.js';
import { titleCheck } from './option-title-twice.js';
import { warrantyCheck } from './option-without-warranty.js';
import { withoutWorkCheck } from './option-without-work.js';
import { bookCheck } from './outside-the-book.js';
import { twiceCheck } from './paid-twice.js';
import { coreCheck } from './part-without-core.js';
import { pictureCheck } from './picture-missing.js';
import { priceCheck } from './price-far-off.js';
import { rangeCheck } from './range-very-wide.js';
import { overlapCheck } from './ranges-overlap.js';
import { reusedBankCheck } from './reused-bank-uneven.js';
import { ruledOutWorkCheck } from './ruled-out-work.js';
import { runsOutCheck } from './runs-out-before-start.js';
import { sentAwayCheck } from './sent-away-whole.js';
import { shopFeeCheck } from './shop-fee-charged.js';
import { orderCheck } from './start-before-written.js';
import { closedStartCheck } from './start-on-closed-day.js';
import { startedCheck } from './started-unauthorised.js';
import { stopCheck } from './stop-without-worth.js';
import { subframeWithoutAlignment } from './subframe-without-alignment.js';
import { swapWithoutEngine } from './swap-without-engine.js';
import { timingWithoutTensioner } from './timing-without-tensioner.js';
import { toolCheck } from './tool-without-arrival.js';
import { unrepairedCheck } from './unrepaired-over-worth.js';
import { unusedCheck } from './unused-line.js';
import { usedEngineWithoutCheck } from './used-engine-without-check.js';
import { usedEngineWithoutWearParts } from './used-engine-without-wear-parts.js';
import { usedCheck } from './used-without-warranty.js';
import { shortCheck } from './valid-too-short.js';
import { valvesWithoutSeats } from './valves-without-seats.js';
import { valvesWithoutStemSeals } from './valves-without-stem-seals.js';
import { nothingCheck } from './work-for-nothing.js';
import { workCheck } from './work-without-finding.js';
import { timeCheck } from './work-without-time.js';

/** Every check of the trade, one module each. Adding a check adds a line here. */
export const allChecks: readonly Check[] = [
  halfCheck,
  waitsCheck,
  lateCheck,
  beltWithoutPump,
  billedCheck,
  closedCheck,
  builtCheck,
  chanceDoneCheck,
  consideredCheck,
  coreCloseCheck,
  coreLateCheck,
  worthCheck,
  debrisCheck,
  debrisWithoutBearings,
  engineOutWithoutRefrigerant,
  engineWithoutCoolant,
  engineWithoutFilter,
  engineWithoutOil,
  engineWithoutSwap,
  findingCheck,
  findsCheck,
  firstCheck,
  fittedCheck,
  headWithoutBolts,
  headWithoutCrackTest,
  headWithoutFlatness,
  headWithoutGasket,
  keepCheck,
  authorisedCheck,
  backCheck,
  startCheck,
  noTax,
  noValid,
  noWorkday,
  oneCheck,
  titleCheck,
  warrantyCheck,
  withoutWorkCheck,
  bookCheck,
  twiceCheck,
  coreCheck,
  pictureCheck,
  priceCheck,
  rangeCheck,
  overlapCheck,
  reusedBankCheck,
  ruledOutWorkCheck,
  runsOutCheck,
  sentAwayCheck,
  shopFeeCheck,
  orderCheck,
  closedStartCheck,
  startedCheck,
  stopCheck,
  subframeWithoutAlignment,
  swapWithoutEngine,
  timingWithoutTensioner,
  toolCheck,
  unrepairedCheck,
  unusedCheck,
  usedEngineWithoutCheck,
  usedEngineWithoutWearParts,
  usedCheck,
  shortCheck,
  valvesWithoutSeats,
  valvesWithoutStemSeals,
  nothingCheck,
  workCheck,
  timeCheck,
];

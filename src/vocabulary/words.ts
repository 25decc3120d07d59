/** Conditions of a part. Said on every part, since a customer must be told what is not new. */
export const partConditions = {
  new: 'New, from the vehicle’s maker or of that quality.',
  aftermarket: 'New, by another maker.',
  rebuilt: 'Rebuilt or remanufactured; usually against a core.',
  used: 'Used, as taken from another vehicle.',
  'customer-supplied': 'Brought by the customer: fitted, not charged.',
} as const;

/** Topics of caution that an estimate may carry; each prints its own text. */
export const cautionTopics = {
  lifting: 'Lifting and supporting an engine or a vehicle.',
  fuel: 'Fuel under pressure.',
  battery: 'Battery and restraint systems.',
  coolant: 'Hot coolant under pressure, and its disposal.',
  refrigerant: 'Refrigerant, and who may recover it.',
  oil: 'Used oil and its disposal.',
  solvents: 'Solvents and cleaning agents.',
} as const;

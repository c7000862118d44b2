/** Words that generated cases are written with: nobody's names, and every kind of letter a search must cope with. */
export const makers = ['Halvard', 'Ostrevik', 'Quillane', 'Brandmoor', 'Thörnqvist & Falk'] as const;

export const customers = [
  'Skerry Line',
  'Northmole Ferries',
  'Ashgill Quarry',
  'Müllerstrand Kühlhaus',
  'Fjærholm Sjøtransport',
  'Corve Valley Power',
  'Żuławska Żegluga',
  'O’Dunmore Haulage',
] as const;

export const claimOpenings = [
  'The nut came loose after the last overhaul.',
  'Unit failed without warning at sea, oil smoke from the funnel.',
  'Loud whistle, then no boost. The compressor wheel touched the housing.',
  'Replaced under warranty eight months ago; again worn out.',
  'Oil in the charge air cooler “from the start”, says the crew.',
  'Turbine blades missing. We hold the supplier’s balancing responsible.',
] as const;

/** Notes and captions are strung together from these. */
export const remarks = [
  'deep grooves along the whole circumference',
  'blue to brown heat tint',
  'oil coked hard, scraped off with a blade',
  'fresh fracture, fine grained',
  'old fracture, rubbed smooth',
  'faces bright where the collar ran',
  'no trace found under the glass',
  'foreign matter pressed into the surface',
  'edge rolled over towards the suction side',
  'Riefen über den halben Umfang',
  'slijtage aan beide zijden',
  'ölfrei gelaufen',
  'torque mark still in line',
  'thread picked up, two turns',
] as const;

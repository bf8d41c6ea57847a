/** Every kind of page with its first heading; the evidence page stands in for those of one job. */
export const PAGES = [
  ['/', /./],
  ['/jobs', 'Jobs'],
  ['/technicians', 'Technicians'],
  ['/training', 'Training'],
  ['/gauges', 'Gauges'],
  ['/calibration', 'Calibration'],
  ['/load', 'Load measurements'],
  ['/settings', 'Settings'],
  ['/settings/people', 'People'],
  ['/settings/trace', 'Trace'],
  ['/jobs/K4105/readings', 'Readings and their history'],
  ['/account', 'My account'],
  ['/account/second-factor', 'Second factor'],
  ['/method', 'How the verdicts are reached'],
  ['/cautions', 'Cautions'],
  ['/jobs/K4105/evidence?round=after-1', 'Evidence: After, round 1'],
] as const;

interface Reason {
  readonly reason: string;
  readonly checks: readonly string[];
}

const ids = (text: string): readonly string[] => text.trim().split(/\s+/);

/** Checks that no table walks, with the reason. */
export const notWalked: readonly Reason[] = [
  {
    reason: 'water vapour as a phase of its own: gas is counted by its dry part, steam has no figure in the program',
    checks: ['if97-r2-300-0.0035'],
  },
  {
    reason:
      'no reading arrives as a resistance: sensors and gateways send temperatures; the tolerance classes are walked',
    checks: ids('pt100-20 pt100-25 pt100-60'),
  },
  { reason: 'a bare difference of a mean and a value: there is no equation to hold', checks: ['cfr-accuracy'] },
  {
    reason: 'the exchangers of these units are plate exchangers in counterflow: the program has no cross-flow equation',
    checks: ['eps-5-0.7-crossflow'],
  },
  {
    reason: 'typical fouling factors, no computation; what a unit fouls is worked out from its own clean figures',
    checks: ['fouling-table'],
  },
  {
    reason: 'the program sizes no control valve: a valve has a command and a position only; K_v itself is walked',
    checks: ids('iec60534-ex1 iec60534-ex2 iec60534-ff'),
  },
  {
    reason: 'no orifice plate is computed: flow meters send flows',
    checks: ids('iso5167-C iso5167-q'),
  },
  {
    reason:
      'heat of the pump in the water is 0.03 K here: it is part of what the heat balance sees, not a figure of its own',
    checks: ['pump-temp-rise'],
  },
  {
    reason:
      'venturis with a velocity of approach, and sonic conductance: openings of a loop draw from still air, for which inleak-*, crit-* and choke-const are walked',
    checks: ids('cfv-cfr ssv-cfr iso6358'),
  },
  {
    reason:
      'targets and figures of alarm performance: walked in tests/unit/backend/evaluation/alarm-performance, beside the figures that they are asked of',
    checks: ids(`
      al-rate-day al-rate-hour al-rate-10min al-peak al-flood-def al-flood-time al-top10 al-stale al-chatter al-prio3
      al-prio4 al-unauth al-data al-kpi-2016 eemua-rate eemua-rate-bands eemua-upset eemua-standing al-metrics-example
    `),
  },
  {
    reason: 'Sparkplug messages: the program reads JSON and plain numbers so far',
    checks: ids(`
      spb-ns spb-state spb-qos spb-seq spb-bdseq spb-time spb-types spb-fields spb-quality spb-alias spb-int-neg
    `),
  },
  {
    reason: 'bytes and defaults of MQTT: the client and the broker are libraries, which encode them',
    checks: ids(`
      mqtt-vbi-0 mqtt-vbi-127 mqtt-vbi-128 mqtt-vbi-321 mqtt-vbi-16383 mqtt-vbi-16384 mqtt-vbi-2097151 mqtt-vbi-2097152
      mqtt-vbi-268435455 mqtt-keepalive mqtt-session mqtt-recvmax mqtt-reason mqtt-props
    `),
  },
  { reason: 'weeks have no number anywhere in the program', checks: ['iso8601-week'] },
  {
    reason:
      'contrast of colours: walked in tests/unit/frontend/styles/tokens.test.ts, beside the colours that it is asked of',
    checks: ids(`
      wcag-000000-ffffff wcag-777777-ffffff wcag-0000ff-ffffff wcag-949494-ffffff wcag-959595-ffffff wcag-thresholds
    `),
  },
  {
    reason: 'rules for screens, no computation: held by axe and by the tests of the screens',
    checks: ids('wcag-target wcag-motion'),
  },
  {
    reason:
      'classes of facility water, supply and room: a site file states the limit of its own racks as a temperature',
    checks: ids(`
      class-W17 class-W27 class-W32 class-W40 class-W45 class-W+ class-S30 class-S40 class-S50 ite-recommended
      ite-dewpoint
    `),
  },
  {
    reason: 'usual ranges of a design, no computation and no default of the program',
    checks: ids('flow-per-kw tcs-dT approach filter vac-levels vac-pv-rule'),
  },
  {
    reason: 'bands of other waters than the loop’s, and rates that coupons tell: no default of the program',
    checks: ids('wq-fws wq-disposal wq-mo-50 wq-cu-rate wq-fill-water'),
  },
  {
    reason: 'liquids that an analyser is calibrated with: it sends conductivity and pH, calibrated',
    checks: ids('kcl-1413 ultrapure ph-buffers'),
  },
  {
    reason: 'hydrogen of corroding aluminium: no sensor tells how much corrodes, so nothing is worked out from it',
    checks: ['h2-corrosion'],
  },
];

/** Values of walked checks that no row holds, with the reason. */
export const valuesNotWalked: readonly { readonly reason: string; readonly values: readonly string[] }[] = [
  { reason: 'speed of sound at 0.1 MPa; that of region 1 is walked', values: ['sr6-260 w', 'sr6-298.15 w'] },
  {
    reason: 'moist air’s water content, enthalpy and volume, air’s density at altitude: no figure rests on them',
    values: ['ashrae-ex1 W', 'ashrae-ex1 RH', 'ashrae-ex1 h', 'ashrae-ex1 v', 'atm-Z2000 rho'],
  },
  {
    reason: 'bare sums, differences and quotients of inputs, whose uncertainty or result is walked',
    values: [
      'gum-h1 l',
      'gum-h2-results R',
      'gum-h2-results X',
      'gum-h2-results Z',
      'inc-11.1-ntu Cr',
      'hx-ww Cr',
      'hx-ww T_TCS_supply',
      'holman-10-8 T_ho',
      'holman-10-9 T_co',
      'holman-10-9 T_ho',
      'holman-10-9 Q',
      'time-to-limit dT/dt',
      'resistance R_ref',
      'resistance R',
      'massflow-temp error',
      'balance gap',
      'cusum-nist cusum(20)',
      't2-sweat F',
    ],
  },
  {
    reason: 'a cross-flow exchanger’s own NTU and UA: the figures of these units are of counterflow',
    values: ['holman-10-8 NTU', 'holman-10-8 UA', 'holman-10-9 NTU'],
  },
  {
    reason: 'the same terms of the meter classes are walked for class 2',
    values: ['mid-mpe-1-10-0.3 Et', 'mid-mpe-1-10-0.3 Ec', 'mid-mpe-3-100-0.3 Et', 'mid-mpe-3-100-0.3 Ec'],
  },
  {
    reason: 'diameter of a thermocouple’s bead, and temperature at a throat: neither is asked of a loop',
    values: ['inc-5.1 D', 'cengel-crit T*'],
  },
  { reason: 'held through the pressure loss that it makes', values: ['darcy-50mm f'] },
  {
    reason: 'the line’s height is not used, only its slope',
    values: ['theil-sen intercept median(y)-b median(x)', 'theil-sen intercept median(y-bx)'],
  },
  {
    reason: 'never, held by the unit test of the ride-through clocks',
    values: ['time-to-limit-loss reaches 50'],
  },
  {
    reason: 'typical values within a walked band, or of a water without inhibitor',
    values: [
      'dew-margin usual',
      'wq-no2 typical',
      'wq-cu good',
      'wq-tcs residue',
      'wq-tcs conductivity_low',
      'wq-tcs conductivity_high',
    ],
  },
  { reason: 'a Monte Carlo run’s: held in tests/monte-carlo', values: ['gums1-9.2.3 MCM half width'] },
];

/**
 * Every row of the collection of check values that this project is held to, by field. Each is walked by a table of this
 * folder or listed, with the reason, in `not-walked.ts`.
 */
export const checkIds: Readonly<Record<string, readonly string[]>> = {
  fluids: ids(`
    const-R const-psi const-mmHg const-pt if97-r1-300-3 if97-r1-300-80 if97-r2-300-0.0035
    if97-psat-300 if97-psat-500 if97-tsat-0.1 if97-tsat-10 psat-10C psat-15C psat-25C psat-35C
    psat-45C psat-50C psat-55C psat-60C psat-80C psat-90C psat-100C tsat-5kPa tsat-20kPa tsat-30kPa
    tsat-60kPa sr6-260 sr6-298.15 water-20C water-25C water-35C water-45C water-50C water-55C
    water-60C water-45C-20kPa water-45C-400kPa visc-998-298.15 visc-1000-373.15 cond-998-298.15
    sigma-20 sigma-40 sigma-50
  `),
  'dissolved air': ids(`
    henry-N2-300 henry-O2-300 henry-CO2-300 do-sat-10 do-sat-20 do-sat-25 do-sat-30 do-sat-40
    weiss-o2-0 weiss-o2-10 weiss-o2-20 weiss-o2-30 weiss-n2-0 weiss-n2-10 weiss-n2-20 weiss-n2-30
    weiss-n2-40 degas-30-101-40
  `),
  'atmosphere and moist air': ids(`
    atm-H0 atm-H500 atm-H1500 atm-H2000 atm-H3000 atm-H4000 atm-Z2000 atm-boil-2000 local-g-45
    ashrae-pws-5 ashrae-pws-25 cfr-pw-9.5 cfr-x-rh cfr-pw-scaled dew-22-60 dew-25-50 dew-30-50
    dew-35-40 wmo-es-10 wmo-es-20 wmo-es-40 ashrae-ex1
  `),
  uncertainty: ids(`
    gum-h2-results gum-h1 gum-h3 gum-rect gum-t-10-95 gum-t-16-99 gums1-9.2.3 heat-u-10K heat-u-2K
    heat-u-corr mid-mpe-2-10-0.3 mid-mpe-1-10-0.3 mid-mpe-2-1-1 mid-mpe-3-100-0.3 pt100-20 pt100-25
    pt100-60 pt-tol-AA-45 pt-tol-A-45 pt-tol-B-45 pt-tol-C-45 pt-pair-dT10-A
  `),
  change: ids(`
    cfr-accuracy cfr-welch cusum-arl-h4-0 cusum-arl-h4-0.25 cusum-arl-h4-0.5 cusum-arl-h4-0.75
    cusum-arl-h4-1 cusum-arl-h4-2 cusum-arl-h5-0 cusum-arl-h5-0.25 cusum-arl-h5-0.5
    cusum-arl-h5-0.75 cusum-arl-h5-1.5 cusum-arl-h5-2 ewma-arl-0.5-0.25 ewma-arl-0.5-1
    ewma-arl-0.25-1 shewhart-arl cusum-montgomery ewma-montgomery cusum-nist ewma-nist t2-sweat
    t2-small pca-spe t2-ucl theil-sen mann-kendall ttl-trend
  `),
  'heat and exchanger': ids(`
    inc-11.1-ntu eps-5-0.7-counterflow eps-5-0.7-crossflow eps-limit-cr1 ntu-inverse lmtd-60-40
    holman-10-8 holman-10-9 hx-ww hx-ww-inverse fouling fouling-table inc-5.1 lag-63 ramp-lag
    time-to-limit time-to-limit-loss time-to-limit-loss2
  `),
  pressure: ids(`
    static-2-45 static-10-25 static-profile vacuum-margin boiling-margin npsh-munson npsh-si
  `),
  hydraulics: ids(`
    colebrook-100000-0.0001 colebrook-50000-0.001 colebrook-20000-0.0005 smooth-1e+06 laminar
    darcy-50mm resistance kv-def iec60534-ex1 iec60534-ex2 iec60534-ff iso5167-C iso5167-q
    massflow-temp pump-hyd pump-dp pump-affinity pump-temp-rise iso9906-1-1999 iso9906-2-1999
    iso9906-1B iso9906-2B iso9906-3B
  `),
  air: ids(`
    leak-cfr leak-pdv sccm leak-tank crit-1.4 crit-1.289 crit-1.33 cengel-crit choke-const cfv-cfr
    ssv-cfr pdp-cfr inleak-1mm-95 inleak-1mm-80 inleak-1mm-30 iso6358 pumpdown-ultimate
  `),
  'chip and heat balance': ids(`
    rth rth-mean balance flow-per-kW-5 flow-per-kW-10
  `),
  'alarm performance': ids(`
    al-rate-day al-rate-hour al-rate-10min al-peak al-flood-def al-flood-time al-top10 al-stale
    al-chatter al-prio3 al-prio4 al-unauth al-data al-kpi-2016 eemua-rate eemua-rate-bands
    eemua-upset eemua-standing al-metrics-example
  `),
  messages: ids(`
    spb-ns spb-state spb-qos spb-seq spb-bdseq spb-time spb-types spb-fields spb-quality spb-alias
    spb-int-neg mqtt-vbi-0 mqtt-vbi-127 mqtt-vbi-128 mqtt-vbi-321 mqtt-vbi-16383 mqtt-vbi-16384
    mqtt-vbi-2097151 mqtt-vbi-2097152 mqtt-vbi-268435455 mqtt-keepalive mqtt-session mqtt-recvmax
    mqtt-reason mqtt-props
  `),
  times: ids(`
    rfc3339-a rfc3339-b rfc3339-leap rfc3339-offset iso8601-week
  `),
  sight: ids(`
    wcag-thresholds wcag-target wcag-motion wcag-000000-ffffff wcag-777777-ffffff wcag-0000ff-ffffff
    wcag-949494-ffffff wcag-959595-ffffff
  `),
  glycol: ids(`
    pg-20vol-30C pg-30vol-30C pg-30vol-40C pg-30vol-50C pg-30vol-60C pg25vol-20C pg25vol-30C
    pg25vol-40C pg25vol-50C pg25mass-melinder-30C pg25mass-melinder-40C pg-volmass pg-flow-penalty
  `),
  'figures of the trade': ids(`
    class-W17 class-W27 class-W32 class-W40 class-W45 class-W+ class-S30 class-S40 class-S50
    ite-recommended ite-dewpoint vel-cda vel-bs6700-10 vel-bs6700-50 vel-bs6700-70 vel-bs6700-90
    vel-swe-10 vel-swe-50 vel-swe-70 vel-swe-90 flow-per-kw tcs-dT approach dew-margin filter
    filter-dp coldplate-rth vac-levels vac-pv-rule altitude-vacuum
  `),
  water: ids(`
    wq-fws wq-tcs wq-disposal wq-mo-50 wq-mo-convert wq-no2 wq-azole wq-cu wq-fe wq-cu-rate
    wq-pg-glycol wq-fill-water kcl-1413 ultrapure cond-tc cond-comp ph-buffers ph-slope h2-corrosion
  `),
};

function ids(text: string): readonly string[] {
  return text.trim().split(/\s+/);
}

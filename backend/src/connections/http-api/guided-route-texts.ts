/** What the routes of guided tests are for. */
export const guidedRouteTexts = {
  'get /api/guided-tests': {
    operationId: 'guidedTestsOfSite',
    summary: 'Every unit with the guided tests that it could have now, what is in the way of each, and the last one.',
  },
  'get /api/units/{unit}/guided-tests': {
    operationId: 'guidedTests',
    summary:
      'Guided tests of a unit: what is offered with cautions, steps and refusals, and those that were, newest first.',
  },
  'get /api/units/{unit}/guided-tests/{id}': {
    operationId: 'guidedTest',
    summary: 'One guided test as it stands: steps, live steadiness, and the whole record to be printed.',
  },
  'post /api/units/{unit}/guided-tests': {
    operationId: 'startGuidedTest',
    summary: 'Begins a guided test where all its gates are open; confirmed once it is committed.',
  },
  'post /api/units/{unit}/guided-tests/{id}/confirm': {
    operationId: 'confirmGuidedStep',
    summary: 'Confirms the present step of a guided test, with what was read off; gates are looked at again.',
  },
  'post /api/units/{unit}/guided-tests/{id}/cancel': {
    operationId: 'cancelGuidedTest',
    summary: 'Cancels a guided test; what was measured is kept, without a verdict.',
  },
} as const;

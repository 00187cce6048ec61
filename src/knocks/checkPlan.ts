import type { KnockPlan, Learning } from './types.ts';

/** @throws RangeError naming the first value of a plan that is out of range */
export function checkPlan(plan: KnockPlan, histories: number): void {
  wholeAbove('histories', histories, 1);
  wholeAbove('flights', plan.flights, 1);
  positive('flightsPerDay', plan.flightsPerDay);
  positive('topSpeed', plan.topSpeed);
  notNegative('order.days', plan.order.days);
  notNegative('order.shipping', plan.order.shipping);
  checkLearning(plan.learning);
  if (plan.hits.length === 0) throw new RangeError('hits must hold at least one kind; found none');
  const kinds = new Set<string>();
  for (const hit of plan.hits) {
    positive(`weight of ${hit.id}`, hit.weight);
    positive(`medianSpeed of ${hit.id}`, hit.medianSpeed);
    notNegative(`logDeviation of ${hit.id}`, hit.logDeviation);
    kinds.add(hit.id);
  }
  for (const part of plan.parts) {
    notNegative(`price of ${part.id}`, part.price);
    notNegative(`benchTime of ${part.id}`, part.benchTime);
    wholeAbove(`spares of ${part.id}`, part.spares, 0);
    for (const speed of part.breaks) {
      if (!kinds.has(speed.hit))
        throw new RangeError(`hit of ${part.id} must be one of hits; found ${speed.hit}`);
      positive(`breaking speed of ${part.id} in ${speed.hit}`, speed.median);
      notNegative(`logDeviation of ${part.id} in ${speed.hit}`, speed.logDeviation);
      wholeAbove(`reached of ${part.id} in ${speed.hit}`, speed.reached, 1);
    }
  }
  if (plan.loss && !(plan.loss.share >= 0 && plan.loss.share <= 1)) {
    throw new RangeError(`loss.share must be between 0 and 1; found ${plan.loss.share}`);
  }
}

export function checkLearning(learning: Learning): void {
  const { first, settled, flightsToLearn, flightsBefore, pilotShape } = learning;
  if (!(first >= settled && settled >= 0)) {
    throw new RangeError(`first >= settled >= 0 crashes a flight are needed; found ${first} and ${settled}`);
  }
  positive('flightsToLearn', flightsToLearn);
  notNegative('flightsBefore', flightsBefore);
  if (pilotShape !== undefined) positive('pilotShape', pilotShape);
}

function positive(name: string, value: number): void {
  if (!(value > 0)) throw new RangeError(`${name} must be above 0; found ${value}`);
}

function notNegative(name: string, value: number): void {
  if (!(value >= 0)) throw new RangeError(`${name} must be 0 or more; found ${value}`);
}

function wholeAbove(name: string, value: number, least: number): void {
  if (!(Number.isInteger(value) && value >= least)) {
    throw new RangeError(`${name} must be a whole number of at least ${least}; found ${value}`);
  }
}

/**
 * Sums of floating-point numbers as if nothing were rounded on the way: the same whatever the order, and the
 * same as `math.fsum` of Python (J. R. Shewchuk, Adaptive Precision Floating-Point Arithmetic).
 */

/**
 * @param {Iterable<number>} values
 * @returns {number} the float that is nearest to their sum
 */
export function exactSum(values) {
  /** Numbers of which none overlaps another, the smallest first. @type {number[]} */
  const parts = [];
  for (const value of values) {
    let high = value;
    let kept = 0;
    for (let at = 0; at < parts.length; at++) {
      let low = parts[at];
      if (Math.abs(high) < Math.abs(low)) [high, low] = [low, high];
      const sum = high + low;
      const lost = low - (sum - high);
      if (lost !== 0) parts[kept++] = lost;
      high = sum;
    }
    parts.length = kept;
    if (high !== 0) parts.push(high);
  }
  return rounded(parts);
}

/** @param {readonly number[]} parts */
function rounded(parts) {
  let at = parts.length - 1;
  if (at < 0) return 0;
  let high = parts[at];
  let low = 0;
  while (at > 0 && low === 0) {
    const before = high;
    at--;
    high = before + parts[at];
    low = parts[at] - (high - before);
  }
  // Half a last digit goes to the even neighbour, unless what is left below leads away from it.
  if (at > 0 && low !== 0 && Math.sign(low) === Math.sign(parts[at - 1])) {
    const twice = low * 2;
    const next = high + twice;
    if (next - high === twice) return next;
  }
  return high;
}

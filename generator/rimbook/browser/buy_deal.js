/**
 * Dealing out pieces to the groups: whether there are enough, and if not, where they lack.
 *
 * By augmenting paths (L. R. Ford and D. R. Fulkerson, Canad. J. Math. 8 (1956) 399). What a group got it
 * keeps, so groups that come first lack last. A group that lacks shows which others compete with it:
 * together they ask more than all kinds that serve them have (P. Hall, J. London Math. Soc. 10 (1935)
 * 26), so without one piece more of those kinds the needs cannot be met.
 */

/**
 * @typedef {object} Lacking
 * @property {number} group
 * @property {number} pieces
 * @property {number[]} rivals the groups that compete, itself among them
 */

export class Deal {
  /**
   * @param {readonly number[]} asks pieces, by group
   * @param {readonly (readonly number[])[]} kindsOf the kinds that serve a group
   * @param {number} kinds how many there are
   */
  constructor(asks, kindsOf, kinds) {
    this.asks = asks;
    this.kindsOf = kindsOf;
    this.kinds = kinds;
    /** Pieces of each kind that each group got: `got[group * kinds + kind]`. */
    this.got = new Int32Array(asks.length * kinds);
    this.left = new Int32Array(kinds);
    this.from = new Int32Array(asks.length);
    this.by = new Int32Array(asks.length);
    /** @type {number[]} */
    this.reached = [];
  }

  /**
   * @param {ArrayLike<number>} supply pieces by kind
   * @returns {Lacking[]} empty if the pieces are enough
   */
  out(supply) {
    this.got.fill(0);
    this.left.set(supply);
    const lacking = [];
    for (let group = 0; group < this.asks.length; group++) {
      let pieces = this.asks[group];
      let brought = pieces;
      while (pieces > 0 && brought > 0) {
        brought = this.augment(group, pieces);
        pieces -= brought;
      }
      if (pieces > 0) lacking.push({ group, pieces, rivals: this.reached });
    }
    return lacking;
  }

  /**
   * One path from a group to a kind with pieces left, through groups that can change to another kind.
   * @param {number} group
   * @param {number} wanted
   * @returns {number} pieces it brought
   */
  augment(group, wanted) {
    this.reached = [group];
    this.from[group] = -1;
    for (let at = 0; at < this.reached.length; at++) {
      for (const kind of this.kindsOf[this.reached[at]]) {
        if (this.left[kind]) return this.pull(this.reached[at], kind, wanted);
        for (let other = 0; other < this.asks.length; other++) {
          if (!this.got[other * this.kinds + kind] || this.reached.includes(other)) continue;
          this.from[other] = this.reached[at];
          this.by[other] = kind;
          this.reached.push(other);
        }
      }
    }
    return 0;
  }

  /**
   * @param {number} end the group that takes from what is left
   * @param {number} kind
   * @param {number} wanted
   */
  pull(end, kind, wanted) {
    const { got, kinds, from, by } = this;
    let pieces = Math.min(wanted, this.left[kind]);
    for (let at = end; from[at] >= 0; at = from[at]) pieces = Math.min(pieces, got[at * kinds + by[at]]);
    this.left[kind] -= pieces;
    got[end * kinds + kind] += pieces;
    for (let at = end; from[at] >= 0; at = from[at]) {
      got[at * kinds + by[at]] -= pieces;
      got[from[at] * kinds + by[at]] += pieces;
    }
    return pieces;
  }
}

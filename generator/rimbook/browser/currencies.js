/**
 * Currencies and their minor units: how many digits stand behind the point.
 *
 * Source: ISO 4217:2015, list one as published on 2026-01-01 by the maintenance agency, without the codes
 * that have no minor unit (metals, units of account, tests).
 */

const TWO =
  "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD CDF CHE CHF " +
  "CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL " +
  "HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU " +
  "MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR " +
  "SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD USN UYU UZS VED " +
  "VES WST XAD XCD XCG YER ZAR ZMW ZWG";

/** @type {Record<string, string>} */
const OTHERS = {
  0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
  3: "BHD IQD JOD KWD LYD OMR TND",
  4: "CLF UYW",
};

/** @type {Map<string, number>} */
const DIGITS = new Map(TWO.split(" ").map((code) => [code, 2]));
for (const [digits, codes] of Object.entries(OTHERS)) {
  for (const code of codes.split(" ")) DIGITS.set(code, Number(digits));
}

/** All codes, in alphabetical order. */
export const CURRENCIES = [...DIGITS.keys()].sort();

/**
 * @param {string} code as in ISO 4217
 * @returns {number | null} null where there is no such currency
 */
export function digitsOf(code) {
  return DIGITS.get(code) ?? null;
}

'use strict';

// Numbers as every other output writes them: three significant digits, prefixes in steps of a thousand.
const prefixes = { '-12': 'p', '-9': 'n', '-6': 'µ', '-3': 'm', 0: '', 3: 'k', 6: 'M', 9: 'G' };

// With a true minus, and none before zero.
function decimals(value, count) {
  return value.toFixed(count).replace(/^-(?=.*[1-9])/, '\u2212').replace(/^-/, '');
}

function threeDigits(value) {
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(3));
  const decade = Math.floor(Math.log10(Math.abs(rounded)) + 1e-9);
  return decimals(rounded, Math.max(0, 2 - decade));
}

function withPrefix(value, unit) {
  if (value === 0) return `0 ${unit}`;
  const [mantissa, exponent] = value.toExponential(2).split('e').map(Number);
  const step = Math.min(9, Math.max(-12, 3 * Math.floor(exponent / 3)));
  // Put together as text, so that no binary fraction comes between.
  return `${threeDigits(Number(`${mantissa}e${exponent - step}`))} ${prefixes[step]}${unit}`;
}

'use strict';

// Reads what the report embeds: outlines as steps of small whole numbers, fields as codes of three decimal digits.
class EmbeddedFields {
  static async read() {
    const description = JSON.parse(document.getElementById('board-data').textContent);
    const packed = Uint8Array.from(atob(document.getElementById('board-bytes').textContent), c => c.charCodeAt(0));
    const inflated = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'));
    return new EmbeddedFields(description, new Uint8Array(await new Response(inflated).arrayBuffer()));
  }

  constructor(description, bytes) {
    this.description = description;
    this.bytes = bytes;
    this.codes = new Map();
  }

  // Outlines in millimetres from the board's lower left corner.
  outline(at) {
    const { bytes, description: { outlineUnitMm: unit } } = this;
    const path = new Path2D();
    const number = () => {
      let value = 0, factor = 1, byte;
      do {
        byte = bytes[at++];
        value += (byte & 0x7f) * factor;
        factor *= 128;
      } while (byte & 0x80);
      return value % 2 ? -(value + 1) / 2 : value / 2;
    };
    let x = 0, y = 0;
    for (let rings = number(); rings > 0; rings--) {
      const points = number();
      for (let i = 0; i < points; i++) {
        x += number();
        y += number();
        if (i === 0) path.moveTo(x * unit, y * unit);
        else path.lineTo(x * unit, y * unit);
      }
      path.closePath();
    }
    return path;
  }

  codesOf(grid, quantity) {
    const at = grid[quantity];
    if (!this.codes.has(at)) {
      const count = grid.columns * grid.rows;
      const codes = new Uint16Array(count);
      for (let i = 0; i < count; i++) {
        const step = this.bytes[at + i] | (this.bytes[at + count + i] << 8);
        codes[i] = i % grid.columns === 0 ? step : codes[i - 1] + step;
      }
      this.codes.set(at, codes);
    }
    return this.codes.get(at);
  }

  // SI value at a point of the board, null where the field has none.
  valueAt(grid, quantity, xMm, yMm) {
    const column = Math.floor((xMm - grid.leftMm) / grid.pitchMm);
    const row = Math.floor((grid.topMm - yMm) / grid.pitchMm);
    return column < 0 || row < 0 || column >= grid.columns || row >= grid.rows
      ? null : EmbeddedFields.valueOf(this.codesOf(grid, quantity)[row * grid.columns + column]);
  }

  static valueOf(code) {
    if (code < 2) return code === 0 ? null : 0;
    const mantissa = 100 + (code - 2) % 900;
    return Number(`${mantissa}e${Math.floor((code - 2) / 900) - 38}`);
  }
}

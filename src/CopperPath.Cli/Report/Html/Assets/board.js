'use strict';

// The board view: pan, zoom, choose, read values, fly to a place.
class BoardView {
  constructor(fields) {
    this.fields = fields;
    this.data = fields.description;
    this.canvas = document.getElementById('view');
    this.reading = document.getElementById('view-reading');
    this.bar = document.getElementById('view-bar');
    this.shades = this.data.shades.match(/.{6}/g);
    this.layers = new Map(this.data.layers.map(layer => [layer.number, {
      quiet: fields.outline(layer.quietAt), reviewed: fields.outline(layer.reviewedAt),
    }]));
    this.profile = fields.outline(this.data.profileAt);
    this.painted = new Map();
    this.layer = this.data.layers[0].number;
    this.quantity = this.data.quantities[0];
    this.stretch = -1;
    this.isBelow = false;
    this.cross = null;
    this.cameFrom = null;
    this.whole();
    this.listen();
    this.showLegend();
  }

  // Places. Board millimetres run right and up from the files' origin, pixels right and down.
  get sign() { return this.isBelow ? -1 : 1; }
  toPx(x, y) { return [this.width / 2 + this.sign * (x - this.x) * this.scale, this.height / 2 - (y - this.y) * this.scale]; }
  toMm(px, py) { return [this.x + this.sign * (px - this.width / 2) / this.scale, this.y - (py - this.height / 2) / this.scale]; }

  measure() {
    this.width = this.canvas.clientWidth;
    this.height = this.canvas.clientHeight;
    this.density = Math.min(window.devicePixelRatio || 1, 3);
    this.canvas.width = Math.round(this.width * this.density);
    this.canvas.height = Math.round(this.height * this.density);
  }

  whole() {
    this.measure();
    this.fit();
    this.draw();
  }

  fit() {
    this.isWhole = true;
    this.x = this.data.leftMm + this.data.widthMm / 2;
    this.y = this.data.bottomMm + this.data.heightMm / 2;
    this.scale = 0.95 * Math.min(this.width / this.data.widthMm, this.height / this.data.heightMm);
    this.leastScale = this.scale / 2;
  }

  // A window of another size shows the whole board if it did before, else the same middle and width.
  refit() {
    const { width, x, y, scale } = this;
    const wasWhole = this.isWhole;
    this.whole();
    if (!wasWhole) {
      this.isWhole = false;
      [this.x, this.y] = [x, y];
      this.scale = Math.max(scale * this.width / width, this.leastScale);
    }
  }

  zoom(factor, px = this.width / 2, py = this.height / 2) {
    const [x, y] = this.toMm(px, py);
    this.isWhole = false;
    this.scale = Math.min(Math.max(this.scale * factor, this.leastScale), 2000);
    this.x = x - this.sign * (px - this.width / 2) / this.scale;
    this.y = y + (py - this.height / 2) / this.scale;
    this.draw();
  }

  // Drawing is put off to the next frame, so that many changes cost one picture.
  draw() {
    if (!this.isDrawing) {
      this.isDrawing = true;
      requestAnimationFrame(() => { this.isDrawing = false; this.paint(); });
    }
  }

  paint() {
    const isDark = !this.isOnPaper && matchMedia('(prefers-color-scheme: dark)').matches;
    const colour = isDark
      ? { page: '#1b1b1d', board: '#29292c', edge: '#87837b', quiet: '#3d3d40', copper: '#5c5a57', line: '#b9b4a9', hole: '#1b1b1d', plate: '#29292c', main: '#ece8e0', beyond: '#ff8a61', onBeyond: '#1b1b1d' }
      : { page: '#ece9e2', board: '#f8f6f2', edge: '#8c867b', quiet: '#ddd8ce', copper: '#c2bbad', line: '#4a463f', hole: '#fffefb', plate: '#fffefb', main: '#23211e', beyond: '#b02c08', onBeyond: '#ffffff' };
    const g = this.canvas.getContext('2d');
    g.setTransform(this.density, 0, 0, this.density, 0, 0);
    g.fillStyle = colour.page;
    g.fillRect(0, 0, this.width, this.height);
    const [originX, originY] = this.toPx(this.data.leftMm, this.data.bottomMm);
    const toBoard = () => g.setTransform(this.density * this.sign * this.scale, 0, 0, -this.density * this.scale, this.density * originX, this.density * originY);

    toBoard();
    const hair = 1 / this.scale;
    g.fillStyle = colour.board;
    g.fill(this.profile);
    const layer = this.layers.get(this.layer);
    g.fillStyle = colour.quiet;
    g.fill(layer.quiet);
    g.fillStyle = colour.copper;
    g.fill(layer.reviewed);
    this.paintFields(g, layer);
    g.lineWidth = 0.6 * hair;
    g.strokeStyle = colour.line;
    g.stroke(layer.reviewed);
    g.lineWidth = 1.5 * hair;
    g.strokeStyle = colour.edge;
    g.stroke(this.profile);

    g.setTransform(this.density, 0, 0, this.density, 0, 0);
    this.paintHoles(g, colour);
    this.showScale();
    this.paintFindings(g, colour);
    this.paintCross(g, colour);
    this.canvas.dataset.x = this.x.toFixed(3);
    this.canvas.dataset.y = this.y.toFixed(3);
    this.canvas.dataset.wide = (this.width / this.scale).toFixed(3);
    this.canvas.dataset.layer = this.layer;
  }

  isShown(stretch) { return this.stretch < 0 || this.stretch === stretch; }

  gridsHere() { return this.data.grids.filter(grid => grid.layer === this.layer && this.isShown(grid.stretch)); }

  paintFields(g, layer) {
    g.save();
    g.clip(layer.reviewed);
    g.imageSmoothingEnabled = false;
    for (const grid of this.gridsHere()) {
      // Rows run downwards: turned over once more, the picture stands upright in board coordinates.
      g.save();
      g.translate(grid.leftMm - this.data.leftMm, grid.topMm - this.data.bottomMm);
      g.scale(grid.pitchMm, -grid.pitchMm);
      g.drawImage(this.pictureOf(grid), 0, 0);
      g.restore();
    }
    g.restore();
  }

  pictureOf(grid) {
    const key = `${grid[this.quantity.id]} ${this.stretch}`;
    if (!this.painted.has(key)) {
      const codes = this.fields.codesOf(grid, this.quantity.id);
      // Stretches that share copper have the same cells, and codes grow with the values: the largest is painted.
      const rivals = this.gridsHere().filter(other => other !== grid
        && ['columns', 'rows', 'leftMm', 'topMm', 'pitchMm'].every(name => other[name] === grid[name])).map(other => this.fields.codesOf(other, this.quantity.id));
      const picture = document.createElement('canvas');
      picture.width = grid.columns;
      picture.height = grid.rows;
      const image = new ImageData(grid.columns, grid.rows);
      const pixels = new Uint32Array(image.data.buffer);
      const shadeOfCode = new Map();
      for (let i = 0; i < codes.length; i++) {
        if (codes[i] === 0 || rivals.some(rival => rival[i] > codes[i])) continue;
        if (!shadeOfCode.has(codes[i])) shadeOfCode.set(codes[i], this.shadeOf(EmbeddedFields.valueOf(codes[i])));
        pixels[i] = shadeOfCode.get(codes[i]);
      }
      picture.getContext('2d').putImageData(image, 0, 0);
      this.painted.set(key, picture);
    }
    return this.painted.get(key);
  }

  get valueScale() { return this.quantity.scales[this.stretch + 1]; }

  shadeOf(valueSi) {
    const { bottom, top } = this.valueScale;
    const value = valueSi * this.quantity.perSi;
    const place = this.quantity.isLogarithmic
      ? (value <= 0 ? 0 : Math.log(value / bottom) / Math.log(top / bottom))
      : (value - bottom) / (top - bottom);
    const rgb = parseInt(this.shades[Math.round(Math.min(1, Math.max(0, place)) * (this.shades.length - 1))], 16);
    return (0xff000000 | ((rgb & 0xff) << 16) | (rgb & 0xff00) | (rgb >> 16)) >>> 0;
  }

  *holesHere() {
    for (const [number, stretch] of this.data.stretches.entries()) {
      if (!this.isShown(number)) continue;
      for (const hole of stretch.holes) {
        if (hole[3] <= this.layer && this.layer <= hole[hole.length - 3]) yield { stretch, hole };
      }
    }
  }

  paintHoles(g, colour) {
    g.fillStyle = colour.hole;
    g.strokeStyle = colour.line;
    g.lineWidth = 0.8;
    for (const { hole: [x, y, diameter] } of this.holesHere()) {
      const [px, py] = this.toPx(x, y);
      if (px < -20 || py < -20 || px > this.width + 20 || py > this.height + 20) continue;
      g.beginPath();
      g.arc(px, py, Math.max(0.7, diameter * this.scale / 2), 0, 2 * Math.PI);
      g.fill();
      if (this.scale > 12) g.stroke();
    }
  }

  paintFindings(g, colour) {
    g.font = '600 12px system-ui, sans-serif';
    g.textAlign = 'center';
    g.textBaseline = 'middle';
    const here = [...this.data.findings.entries()].filter(([, finding]) => finding.layer === this.layer)
      .map(([i, finding]) => ({ number: i + 1, finding, frame: this.frameOf(finding) }));
    const plates = [];
    for (const { number, finding, frame } of here) {
      const plate = this.freePlace(frame, [...plates, ...here.map(other => other.frame)]);
      plates.push({ x: plate[0], y: plate[1], halfWidth: 6, halfHeight: 6 });
      const path = new Path2D();
      // As in the pictures: a ring, or a box round all it is about; the plate filled and square where a limit is broken, else open and rounded.
      if (finding.boxMm) {
        path.roundRect(frame.x - frame.halfWidth, frame.y - frame.halfHeight, 2 * frame.halfWidth, 2 * frame.halfHeight, 4);
        path.moveTo(...BoardView.nearestOn(frame, plate));
      } else {
        const far = Math.hypot(plate[0] - frame.x, plate[1] - frame.y);
        path.arc(frame.x, frame.y, frame.halfWidth, 0, 2 * Math.PI);
        path.moveTo(...[0, 1].map(axis => frame[axis ? 'y' : 'x'] + frame.halfWidth * (plate[axis] - frame[axis ? 'y' : 'x']) / far));
      }
      path.lineTo(...plate);
      for (const [width, style] of [[4, colour.plate], [2, colour.beyond]]) {
        g.lineWidth = width;
        g.strokeStyle = style;
        g.stroke(path);
      }
      const half = Math.max(10, g.measureText(number).width / 2 + 5);
      g.fillStyle = finding.isBeyond ? colour.beyond : colour.plate;
      g.beginPath();
      g.roundRect(plate[0] - half, plate[1] - 9, 2 * half, 18, finding.isBeyond ? 0 : 5);
      g.fill();
      g.stroke();
      g.fillStyle = finding.isBeyond ? colour.onBeyond : colour.main;
      g.fillText(String(number), plate[0], plate[1] + 0.5);
    }
  }

  // Middle and half sizes of what a finding is about, in pixels; a spot takes a ring of six.
  frameOf({ xMm, yMm, boxMm }) {
    if (!boxMm) {
      const [x, y] = this.toPx(xMm, yMm);
      return { x, y, halfWidth: 6, halfHeight: 6 };
    }
    const [x, y] = this.toPx((boxMm[0] + boxMm[2]) / 2, (boxMm[1] + boxMm[3]) / 2);
    return { x, y, halfWidth: 4 + Math.max(3, (boxMm[2] - boxMm[0]) * this.scale / 2), halfHeight: 4 + Math.max(3, (boxMm[3] - boxMm[1]) * this.scale / 2) };
  }

  static nearestOn({ x, y, halfWidth, halfHeight }, [px, py]) {
    return [Math.min(x + halfWidth, Math.max(x - halfWidth, px)), Math.min(y + halfHeight, Math.max(y - halfHeight, py))];
  }

  // A plate stands beside what it points at, where it covers neither another plate nor what any points at and is not cut off.
  freePlace(frame, taken) {
    const places = [];
    for (const reach of [22, 44, 69, 99]) {
      for (const turn of [7, 1, 3, 5, 0, 4, 6, 2]) {
        places.push([frame.x + (frame.halfWidth + reach) * Math.cos(turn * Math.PI / 4), frame.y + (frame.halfHeight + reach) * Math.sin(turn * Math.PI / 4)]);
      }
    }
    const isWhole = ([x, y]) => x > 16 && y > 12 && x < this.width - 16 && y < this.height - 12;
    const isClear = ([x, y]) => taken.every(other => {
      const [nearX, nearY] = BoardView.nearestOn(other, [x, y]);
      return Math.hypot(nearX - x, nearY - y) > 16;
    });
    return places.find(place => isWhole(place) && isClear(place)) ?? places.find(isWhole) ?? places[0];
  }

  // The bar stands under the picture, where it covers nothing; its width is a share of the picture's.
  showScale() {
    const wanted = 120 / this.scale;
    const power = 10 ** Math.floor(Math.log10(wanted));
    const length = power * [5, 2, 1].find(lead => lead * power <= wanted);
    this.bar.firstElementChild.style.width = `${(100 * length * this.scale / this.width).toFixed(3)}%`;
    this.bar.lastElementChild.textContent = `${Number(length.toPrecision(1))} mm`;
  }

  // Paper shows each layer that has something to show, whole and in light colours, painted before the pages are laid out.
  showSheets() {
    const sheets = document.getElementById('view-sheets');
    if (sheets.childElementCount > 0) return;
    const legend = document.getElementById('view-legend').cloneNode(true);
    legend.removeAttribute('id');
    sheets.append(...this.data.layers.map(layer => layer.number).filter(number => this.hasSomethingOn(number)).map(number => this.sheetOf(number)));
    sheets.firstElementChild?.firstElementChild.after(legend);
  }

  hasSomethingOn(layer) {
    return this.data.findings.some(finding => finding.layer === layer) || this.data.grids.some(grid => grid.layer === layer && this.isShown(grid.stretch));
  }

  sheetOf(layer) {
    const figure = document.createElement('figure');
    const words = document.createElement('figcaption');
    const chosen = document.getElementById('view-stretch').selectedOptions[0].textContent;
    words.textContent = `Layer ${document.querySelector(`#view-layer option[value="${layer}"]`).textContent}, ${this.quantity.name.toLowerCase()}, ${this.stretch < 0 ? 'all stretches' : chosen}`
      + `${this.isBelow ? ', seen from below' : ''}`;
    const bar = this.bar.cloneNode(true);
    bar.removeAttribute('id');
    const canvas = document.createElement('canvas');
    const width = 688, height = Math.round(Math.min(760, 20 + width * this.data.heightMm / this.data.widthMm)), density = 2.5;
    [canvas.width, canvas.height] = [width * density, height * density];
    const sheet = Object.assign(Object.create(this), { layer, canvas, bar, width, height, density, isOnPaper: true, cross: null });
    sheet.fit();
    sheet.paint();
    figure.append(words, canvas, bar);
    return figure;
  }

  paintCross(g, colour) {
    if (!this.cross) return;
    const [px, py] = this.toPx(...this.cross);
    for (const [width, style] of [[4, colour.hole], [1.6, colour.main]]) {
      g.lineWidth = width;
      g.strokeStyle = style;
      g.beginPath();
      for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]]) {
        g.moveTo(px + 4 * dx, py + 4 * dy);
        g.lineTo(px + 15 * dx, py + 15 * dy);
      }
      g.stroke();
    }
  }

  // Says what is at a point: every shown stretch that has a value there, and the hole under it.
  read(x, y) {
    const lines = [];
    for (const { stretch, hole } of this.holesHere()) {
      if (Math.hypot(hole[0] - x, hole[1] - y) > hole[2] / 2) continue;
      const parts = [];
      for (let i = 3; i < hole.length; i += 4) {
        parts.push(`between layers ${hole[i]} and ${hole[i + 1]} ${withPrefix(hole[i + 2], 'A')}, rise ${decimals(hole[i + 3], 1)} K`);
      }
      lines.push([['b', stretch.name], ['', `: plated hole ${threeDigits(hole[2])} mm, ${parts.join('; ')}`]]);
    }
    for (const grid of this.gridsHere()) {
      const density = this.fields.valueAt(grid, 'density', x, y);
      const drop = this.fields.valueAt(grid, 'drop', x, y);
      if (density === null && drop === null) continue;
      lines.push([['b', this.data.stretches[grid.stretch].name],
        ['', ': '], ['density', density === null ? 'contact or hole' : `${threeDigits(density * 1e-6)} A/mm²`],
        ['', ', drop '], ['drop', drop === null ? 'none' : withPrefix(drop, 'V')],
        ...(grid.rise === undefined ? [] : [['', ', rise '], ['rise', this.riseText(grid, x, y)]]),
        ['', ` (cell ${grid.pitchMm} mm)`]]);
    }
    const place = `Layer ${this.layer}, x ${decimals(x, 2)} mm, y ${decimals(y, 2)} mm`;
    this.reading.replaceChildren(lines.length ? `${place}. ` : `${place}: no solved copper.`, ...lines.flatMap((line, i) => [
      ...(i ? [document.createElement('br')] : []), ...line.map(BoardView.piece)]));
  }

  riseText(grid, x, y) {
    const rise = this.fields.valueAt(grid, 'rise', x, y);
    return rise === null ? 'none' : `${threeDigits(rise)} K`;
  }

  static piece([kind, text]) {
    if (kind === '') return text;
    const element = document.createElement(kind === 'b' ? 'b' : 'span');
    if (kind !== 'b') element.dataset.value = kind;
    element.textContent = text;
    return element;
  }

  setCross(x, y) {
    this.cross = [x, y];
    const [px, py] = this.toPx(x, y);
    if (px < 20 || py < 20 || px > this.width - 20 || py > this.height - 20) {
      [this.x, this.y] = this.cross;
      this.isWhole = false;
    }
    this.read(x, y);
    this.draw();
  }

  setLayer(number) {
    if (!this.layers.has(number)) return;
    this.layer = number;
    document.getElementById('view-layer').value = number;
    if (this.cross) this.read(...this.cross);
    this.draw();
  }

  flyTo(layer, x, y, what, from) {
    this.cameFrom = from;
    if (this.stretch >= 0) {
      this.stretch = -1;
      document.getElementById('view-stretch').value = '-1';
      this.showLegend();
    }
    this.setLayer(layer);
    this.cross = [x, y];
    this.isWhole = false;
    document.getElementById('board').scrollIntoView({ block: 'start' });
    this.canvas.focus({ preventScroll: true });
    this.read(x, y);
    this.reading.prepend(`${what[0].toUpperCase()}${what.slice(1)}: `);
    const start = { x: this.x, y: this.y, scale: this.scale, at: performance.now() };
    const scale = Math.max(this.scale, this.width / 24);
    const lasts = matchMedia('(prefers-reduced-motion: reduce)').matches ? 0 : 350;
    const step = now => {
      const part = lasts === 0 ? 1 : Math.min(1, Math.max(0, (now - start.at) / lasts));
      const eased = part * part * (3 - 2 * part);
      this.x = start.x + (x - start.x) * eased;
      this.y = start.y + (y - start.y) * eased;
      this.scale = start.scale * (scale / start.scale) ** eased;
      this.draw();
      if (part < 1) requestAnimationFrame(step);
    };
    step(performance.now());
  }

  showLegend() {
    const legend = document.getElementById('view-legend');
    const head = document.createElement('div');
    head.textContent = `${this.quantity.name}, ${this.quantity.unit}${this.quantity.isLogarithmic ? ', logarithmic; ends include what lies beyond' : ''}`;
    const ramp = document.createElement('div');
    ramp.className = 'ramp';
    ramp.style.background = `linear-gradient(to right, ${this.shades.filter((_, i) => i % 15 === 0).map(shade => `#${shade}`).join(',')})`;
    const ticks = document.createElement('div');
    ticks.className = 'ticks';
    for (const tick of this.valueScale.ticks) {
      const label = document.createElement('span');
      label.style.left = `${100 * tick.place}%`;
      label.textContent = tick.label;
      ticks.append(label);
    }
    legend.replaceChildren(head, ramp, ticks);
  }

  listen() {
    const choose = (id, use) => document.getElementById(id).addEventListener('change', event => {
      use(event.target);
      this.showLegend();
      if (this.cross) this.read(...this.cross);
      this.draw();
    });
    const quantities = document.getElementById('view-quantity');
    for (const quantity of this.data.quantities) quantities.add(new Option(quantity.name, quantity.id));
    choose('view-layer', field => { this.layer = Number(field.value); });
    choose('view-quantity', field => { this.quantity = this.data.quantities.find(quantity => quantity.id === field.value); });
    choose('view-stretch', field => { this.stretch = Number(field.value); });
    choose('view-below', field => { this.isBelow = field.checked; });
    document.getElementById('view-controls').addEventListener('submit', event => event.preventDefault());
    document.getElementById('view-in').addEventListener('click', () => this.zoom(1.5));
    document.getElementById('view-out').addEventListener('click', () => this.zoom(1 / 1.5));
    document.getElementById('view-all').addEventListener('click', () => this.whole());
    this.listenToPointer();
    this.canvas.addEventListener('keydown', event => this.onKey(event));
    for (const button of document.querySelectorAll('.fly')) {
      const { layer, x, y, what } = button.dataset;
      button.addEventListener('click', () => this.flyTo(Number(layer), Number(x), Number(y), what, button));
    }
    new ResizeObserver(() => this.refit()).observe(this.canvas);
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.draw());
    const onPaper = isPrinting => isPrinting ? this.showSheets() : document.getElementById('view-sheets').replaceChildren();
    addEventListener('beforeprint', () => onPaper(true));
    addEventListener('afterprint', () => onPaper(false));
    matchMedia('print').addEventListener('change', event => onPaper(event.matches));
  }

  listenToPointer() {
    let held = null;
    this.canvas.addEventListener('pointerdown', event => {
      held = { px: event.offsetX, py: event.offsetY, moved: false };
      this.canvas.setPointerCapture(event.pointerId);
    });
    this.canvas.addEventListener('pointermove', event => {
      if (held) {
        const dx = event.offsetX - held.px, dy = event.offsetY - held.py;
        if (!held.moved && Math.hypot(dx, dy) < 4) return;
        this.isWhole = false;
        this.x -= this.sign * dx / this.scale;
        this.y += dy / this.scale;
        held = { px: event.offsetX, py: event.offsetY, moved: true };
        this.draw();
      } else {
        this.read(...this.toMm(event.offsetX, event.offsetY));
      }
    });
    this.canvas.addEventListener('pointerup', event => {
      if (held && !held.moved) this.setCross(...this.toMm(event.offsetX, event.offsetY));
      held = null;
    });
    this.canvas.addEventListener('pointercancel', () => { held = null; });
    this.canvas.addEventListener('wheel', event => {
      event.preventDefault();
      this.zoom(Math.exp(-event.deltaY * 0.0015), event.offsetX, event.offsetY);
    }, { passive: false });
  }

  onKey(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const step = (event.shiftKey ? 50 : 5) / this.scale;
    const move = (dx, dy) => {
      const [x, y] = this.cross ?? [this.x, this.y];
      this.setCross(x + this.sign * dx * step, y + dy * step);
    };
    const actions = {
      ArrowLeft: () => move(-1, 0),
      ArrowRight: () => move(1, 0),
      ArrowUp: () => move(0, 1),
      ArrowDown: () => move(0, -1),
      '+': () => this.zoom(1.5, ...(this.cross ? this.toPx(...this.cross) : [])),
      '=': () => this.zoom(1.5, ...(this.cross ? this.toPx(...this.cross) : [])),
      '-': () => this.zoom(1 / 1.5, ...(this.cross ? this.toPx(...this.cross) : [])),
      0: () => this.whole(),
      PageUp: () => this.setLayer(this.layer - 1),
      PageDown: () => this.setLayer(this.layer + 1),
      Escape: () => this.cameFrom?.focus(),
    };
    if (Object.hasOwn(actions, event.key)) {
      event.preventDefault();
      actions[event.key]();
    }
  }
}

// A frame left open keeps the page from counting as loaded until the fields are there: who prints it unattended waits for that.
const unfinished = document.createElement('iframe');
unfinished.hidden = true;
document.documentElement.append(unfinished);
unfinished.contentDocument.open();
EmbeddedFields.read().then(fields => {
  window.boardView = new BoardView(fields);
  document.documentElement.dataset.ready = 'true';
}).finally(() => {
  unfinished.contentDocument.close();
  unfinished.remove();
});

// Looks through a page for what keeps people out and returns one line for each fault, led by the number of the
// success criterion of WCAG 2.2 (W3C Recommendation, 2024) that it breaks. Returns what it looked at, too, so that
// nobody takes an empty page for a good one.
() => {
  'use strict';
  const faults = [];
  const seen = {};
  const all = (selector, root = document) => [...root.querySelectorAll(selector)];
  const fault = (criterion, element, what) => faults.push(`${criterion} ${what}: ${element.outerHTML.slice(0, 160).replace(/\s+/g, ' ')}`);
  const look = (name, elements, check) => {
    seen[name] = elements.length;
    elements.forEach(check);
  };
  const isShown = element => element.checkVisibility({ visibilityProperty: true }) && !element.closest('noscript');
  const words = element => (element?.textContent ?? '').replace(/\s+/g, ' ').trim();
  const ownName = element => [
    ...(element.getAttribute('aria-labelledby') ?? '').split(/\s+/).filter(Boolean).map(id => words(document.getElementById(id))),
    element.getAttribute('aria-label') ?? '', element.getAttribute('alt') ?? '', element.getAttribute('title') ?? '',
  ].join(' ').trim();
  const nameOf = element => ownName(element) || [...(element.labels ?? [])].map(words).join(' ') || (/^(INPUT|SELECT|TEXTAREA)$/.test(element.tagName) ? '' : words(element));

  // 1.1.1 Non-text content.
  look('pictures', all('img, svg, canvas').filter(isShown), element => {
    if (!ownName(element) && !element.closest('[aria-hidden=true]')) fault('1.1.1', element, 'picture without a text for it');
  });

  // 1.3.1 Info and relationships: headings, tables, lists.
  let level = 0;
  const headings = all('h1, h2, h3, h4, h5, h6').filter(isShown);
  look('headings', headings, heading => {
    const own = Number(heading.tagName[1]);
    if (own > level + 1) fault('1.3.1', heading, `heading of level ${own} after level ${level}`);
    if (!words(heading)) fault('1.3.1', heading, 'empty heading');
    level = own;
  });
  if (headings.filter(heading => heading.tagName === 'H1').length !== 1) fault('1.3.1', document.body, 'not one heading of the first level');
  look('tables', all('table').filter(isShown), table => {
    if (!words(table.caption) && !ownName(table)) fault('1.3.1', table, 'table without a caption');
    const heads = table.tHead ? [...table.tHead.rows[0].cells] : [];
    if (heads.length === 0) fault('1.3.1', table, 'table without heads');
    for (const head of heads) {
      if (head.tagName !== 'TH' || head.getAttribute('scope') !== 'col' || !words(head)) fault('1.3.1', head, 'column without a head of its own');
    }
    for (const body of table.tBodies) {
      for (const row of body.rows) {
        if ([...row.cells].reduce((sum, cell) => sum + cell.colSpan, 0) !== heads.length) fault('1.3.1', row, 'row with more or fewer cells than heads');
      }
    }
  });
  look('list items', all('li'), item => {
    if (!/^(UL|OL)$/.test(item.parentElement.tagName)) fault('1.3.1', item, 'list item outside a list');
  });
  look('terms', all('dt, dd'), item => {
    if (!item.closest('dl')) fault('1.3.1', item, 'term outside a list of terms');
  });

  // 1.4.3 Contrast (minimum): relative luminance and ratio as WCAG 2.2 defines them.
  const paper = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  const rgba = colour => {
    paper.clearRect(0, 0, 1, 1);
    paper.fillStyle = colour;
    paper.fillRect(0, 0, 1, 1);
    const [r, g, b, a] = paper.getImageData(0, 0, 1, 1).data;
    return [r, g, b, a / 255];
  };
  const over = (front, back) => [0, 1, 2].map(i => front[i] * front[3] + back[i] * (1 - front[3])).concat(1);
  const luminance = ([r, g, b]) => {
    const [lr, lg, lb] = [r, g, b].map(v => v / 255).map(v => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4));
    return 0.2126 * lr + 0.7152 * lg + 0.0722 * lb;
  };
  const contrast = (a, b) => {
    const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (high + 0.05) / (low + 0.05);
  };
  const groundOf = element => {
    const layers = [];
    if (element.closest('svg') && element.tagName !== 'svg') {
      // In a drawing what lies below is what was drawn before at that place.
      element.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
      const box = element.getBoundingClientRect();
      for (const below of document.elementsFromPoint(box.left + box.width / 2, box.top + box.height / 2)) {
        if (below === element || element.contains(below) || below.contains(element) && below.closest('svg') === element.closest('svg') && below.tagName !== 'svg') continue;
        const style = getComputedStyle(below);
        layers.push(rgba(below instanceof SVGElement && below.tagName !== 'svg' ? style.fill : style.backgroundColor));
      }
    } else {
      for (let at = element; at; at = at.parentElement) layers.push(rgba(getComputedStyle(at).backgroundColor));
    }
    return [...layers, rgba(matchMedia('(prefers-color-scheme: dark)').matches ? '#000' : '#fff')].reduceRight((back, front) => over(front, back), [255, 255, 255, 1]);
  };
  const texts = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const element = walker.currentNode.parentElement;
    if (words(walker.currentNode) && !/^(SCRIPT|STYLE|NOSCRIPT|OPTION)$/.test(element.tagName) && isShown(element) && !texts.includes(element)) texts.push(element);
  }
  look('texts', texts, element => {
    if (element.closest('.unseen, .skip:not(:focus)')) return;
    const style = getComputedStyle(element);
    const ground = groundOf(element);
    const ink = over(rgba(element.closest('svg') ? style.fill : style.color), ground);
    const sizePx = parseFloat(style.fontSize);
    const isLarge = sizePx >= 24 || (sizePx >= 18.66 && Number(style.fontWeight) >= 700);
    const ratio = contrast(ink, ground);
    if (ratio < (isLarge ? 3 : 4.5)) fault('1.4.3', element, `contrast ${ratio.toFixed(2)}`);
  });

  // 1.4.11 Non-text contrast: what shows where a control is, its edge or its ground, against what lies around it.
  const controls = all('button, select, input').filter(isShown);
  look('controls', controls.filter(control => getComputedStyle(control).borderTopStyle !== 'none'), control => {
    const around = groundOf(control.parentElement);
    const style = getComputedStyle(control);
    const best = Math.max(contrast(over(rgba(style.borderTopColor), around), around), contrast(over(rgba(style.backgroundColor), around), around));
    if (best < 3 && control.type !== 'checkbox') fault('1.4.11', control, `edge of a control with contrast ${best.toFixed(2)}`);
  });

  // 2.1.1 Keyboard: what scrolls can be reached and scrolled without a pointer.
  look('boxes that scroll', all('*').filter(element => isShown(element) && /auto|scroll/.test(getComputedStyle(element).overflowX + getComputedStyle(element).overflowY)), element => {
    const scrolls = element.scrollWidth > element.clientWidth + 1 || element.scrollHeight > element.clientHeight + 1;
    if (scrolls && element.tabIndex < 0 && element !== document.documentElement && element !== document.body) fault('2.1.1', element, 'box that scrolls only for a pointer');
  });

  // 2.4.1 Bypass blocks, 2.4.2 Page titled, 2.4.3 Focus order, 3.1.1 Language of page.
  look('links within the page', all('a[href^="#"]'), link => {
    if (!document.getElementById(link.getAttribute('href').slice(1))) fault('2.4.1', link, 'link to nowhere');
  });
  const first = all('a[href], button, select, input, [tabindex]').find(element => element.tabIndex >= 0);
  if (!first?.matches('a[href^="#"]')) fault('2.4.1', first ?? document.body, 'the first stop of the keyboard does not lead past the head');
  if (!document.title.trim()) fault('2.4.2', document.head, 'page without a title');
  look('tab stops', all('[tabindex]'), element => {
    if (element.tabIndex > 0) fault('2.4.3', element, 'tab stop out of the order of reading');
  });
  if (!/^[a-z]{2}/.test(document.documentElement.lang)) fault('3.1.1', document.documentElement.cloneNode(), 'language not said');

  // 2.5.8 Target size (minimum): 24 by 24 CSS pixels; links in a sentence and the browser's own boxes are excepted.
  look('targets', all('button, select, nav a').filter(isShown), target => {
    const { width, height } = target.getBoundingClientRect();
    if (width < 24 || height < 24) fault('2.5.8', target, `target of ${width.toFixed(0)} by ${height.toFixed(0)} pixels`);
  });

  // 4.1.2 Name, role, value; 3.3.2 Labels; 4.1.3 Status messages.
  look('names', all('a[href], button, select, input, textarea, [role], [tabindex]').filter(isShown), element => {
    if (!nameOf(element)) fault(/^(SELECT|INPUT|TEXTAREA)$/.test(element.tagName) ? '3.3.2' : '4.1.2', element, 'without a name');
    if (element.tagName !== 'PRE' && element.tabIndex >= 0 && /^(DIV|SPAN|CANVAS)$/.test(element.tagName) && !element.getAttribute('role')) fault('4.1.2', element, 'tab stop without a role');
  });
  const roles = ['application', 'img', 'region', 'group', 'presentation', 'none', 'status', 'alert', 'note'];
  // A part of a table may state the role it has: some browsers forget it where the table is laid out otherwise.
  const own = { TABLE: 'table', THEAD: 'rowgroup', TBODY: 'rowgroup', TR: 'row', TH: 'columnheader', TD: 'cell' };
  look('roles', all('[role]'), element => {
    if (!roles.includes(element.getAttribute('role')) && own[element.tagName] !== element.getAttribute('role')) fault('4.1.2', element, 'role that this page has no use for');
  });
  const attributes = { 'aria-label': /\S/, 'aria-labelledby': /\S/, 'aria-describedby': /\S/, 'aria-hidden': /^(true|false)$/, 'aria-live': /^(polite|assertive|off)$/, 'aria-sort': /^(ascending|descending|none|other)$/ };
  look('aria', all('*').filter(element => [...element.attributes].some(attribute => attribute.name.startsWith('aria-'))), element => {
    for (const { name, value } of [...element.attributes].filter(attribute => attribute.name.startsWith('aria-'))) {
      if (!attributes[name]?.test(value)) fault('4.1.2', element, `${name} that is unknown or empty`);
      if (/labelledby|describedby/.test(name) && value.split(/\s+/).some(id => !document.getElementById(id))) fault('4.1.2', element, `${name} that points nowhere`);
      if (name === 'aria-sort' && element.tagName !== 'TH') fault('4.1.2', element, 'sorted, but no head');
      if (name === 'aria-hidden' && value === 'true' && all('a[href], button, select, input, [tabindex]', element).length) fault('4.1.2', element, 'hidden from some, a tab stop for others');
    }
    if (element.hasAttribute('aria-label') && /^(DIV|SPAN|P)$/.test(element.tagName) && !element.getAttribute('role')) fault('4.1.2', element, 'name on something without a role');
  });
  const ids = all('[id]').map(element => element.id);
  for (const id of new Set(ids.filter((id, i) => ids.indexOf(id) !== i))) fault('4.1.2', document.getElementById(id), `identifier ${id} twice`);
  if (all('main').length !== 1) fault('1.3.1', document.body.cloneNode(), 'not one main part');
  if (!document.querySelector('[aria-live=polite], [role=status]')) fault('4.1.3', document.body.cloneNode(), 'readings are not announced');
  return { faults, seen };
}

'use strict';

// Heads of sortable columns become buttons; a second press turns the order round. Empty keys always come last.
for (const head of document.querySelectorAll('th[data-sort]')) {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = head.textContent;
  head.dataset.head = head.textContent;
  head.replaceChildren(button);
  button.addEventListener('click', () => sortBy(head));
}

// Laid out as cards on narrow pages, the rows of findings stay a table to those who do not see them.
for (const [parts, role] of [['table', 'table'], ['thead, tbody', 'rowgroup'], ['tr', 'row'], ['th', 'columnheader'], ['td', 'cell']]) {
  for (const part of document.querySelectorAll(`#findings :is(${parts})`)) part.setAttribute('role', role);
}

// A table wider than the page scrolls in a box of its own; then, and only then, the box can take the focus and says so.
const boxes = new ResizeObserver(entries => {
  for (const { target } of entries) {
    const box = target.closest('.scroller');
    const scrolls = box.scrollWidth > box.clientWidth + 1;
    box.tabIndex = scrolls ? 0 : -1;
    box.classList.toggle('scrolls', scrolls);
  }
});
for (const box of document.querySelectorAll('.scroller')) {
  boxes.observe(box);
  boxes.observe(box.firstElementChild);
}

function sortBy(head) {
  const row = head.parentElement;
  const column = [...row.children].indexOf(head);
  const isNumber = head.dataset.sort === 'number';
  const rising = head.getAttribute('aria-sort') !== (isNumber ? 'descending' : 'ascending') ? !isNumber : isNumber;
  for (const other of row.children) other.removeAttribute('aria-sort');
  head.setAttribute('aria-sort', rising ? 'ascending' : 'descending');

  const body = head.closest('table').tBodies[0];
  const keyed = [...body.rows].map(line => ({ line, key: line.cells[column].dataset.key }));
  keyed.sort((a, b) => {
    if (a.key === '' || b.key === '') return (a.key === '') - (b.key === '');
    const order = isNumber ? a.key - b.key : a.key.localeCompare(b.key, 'en', { numeric: true });
    return rising ? order : -order;
  });
  body.append(...keyed.map(item => item.line));
}

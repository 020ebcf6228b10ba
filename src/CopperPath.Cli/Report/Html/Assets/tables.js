'use strict';

// Heads of sortable columns become buttons; a second press turns the order round. Empty keys always come last.
for (const head of document.querySelectorAll('th[data-sort]')) {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = head.textContent;
  head.replaceChildren(button);
  button.addEventListener('click', () => sortBy(head));
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

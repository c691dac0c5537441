// Copies of workings, answers and links to figures; opens the fold that an address points into.
// Pages read whole without this file, and have no button that does nothing.
(function () {
  'use strict';
  function all(selector) { return Array.from(document.querySelectorAll(selector)); }
  function make(tag, attributes, text) {
    var element = document.createElement(tag);
    Object.keys(attributes).forEach(function (name) { element.setAttribute(name, attributes[name]); });
    if (text) element.textContent = text;
    return element;
  }
  var said = make('p', { 'class': 'vh', role: 'status' });

  function address(id) {
    var canonical = document.querySelector('link[rel=canonical]');
    return (canonical ? canonical.href : location.href.split('#')[0]) + '#' + id;
  }

  function tell(button, text) {
    var before = button.dataset.words || (button.dataset.words = button.textContent);
    button.textContent = text;
    said.textContent = '';
    setTimeout(function () { said.textContent = text + ': ' + button.getAttribute('aria-label'); }, 50);
    setTimeout(function () { button.textContent = before; }, 2000);
  }

  // Where the clipboard is refused, the text stands selected in a box, to be copied by hand.
  function box(text, button) {
    var row = button.parentNode, old = row.parentNode.querySelector(':scope > .copy-box');
    if (old) old.remove();
    var holder = make('div', { 'class': 'copy-box' }), label = make('label', {}, 'Copy it from here');
    var area = make('textarea', { readonly: '', rows: String(Math.min(12, text.split('\n').length + 1)) });
    var shut = make('button', { type: 'button' }, 'Close');
    area.value = text;
    label.append(area);
    holder.append(label, shut);
    row.after(holder);
    area.focus();
    area.select();
    shut.addEventListener('click', function () { holder.remove(); button.focus(); });
  }

  function copy(text, button) {
    var write = navigator.clipboard ? navigator.clipboard.writeText(text) : Promise.reject(new Error('refused'));
    write.then(function () { tell(button, 'Copied'); }, function () { box(text, button); });
  }

  function row(name, buttons) {
    var holder = make('div', { 'class': 'copies', role: 'group', 'aria-label': 'Copy ' + name });
    holder.append(make('span', { 'class': 'tag', 'aria-hidden': 'true' }, 'Copy'));
    buttons.forEach(function (one) {
      var button = make('button', { type: 'button', 'aria-label': one[1] }, one[0]);
      button.addEventListener('click', function () { copy(one[2](), button); });
      holder.append(button);
    });
    return holder;
  }

  function inUnits(element, name) {
    return element.getAttribute('data-' + name + '-' + (document.documentElement.dataset.units || 'si'));
  }

  function texts(element, name) {
    var link = function () { return address(element.id); }, buttons = [];
    if (element.hasAttribute('data-latex-si')) {
      buttons.push(['LaTeX', 'Copy ' + name + ' as LaTeX', function () { return inUnits(element, 'latex') + '\n% ' + link(); }]);
      buttons.push(['Plain text', 'Copy ' + name + ' as plain text', function () { return inUnits(element, 'plain') + '\n' + link(); }]);
    }
    buttons.push(['Sentence', 'Copy ' + name + ' as one sentence', function () { return inUnits(element, 'sentence') + ' ' + link(); }]);
    buttons.push(['Link', 'Copy link to ' + name, link]);
    return row(name, buttons);
  }

  function opened() {
    var target = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    for (var at = target; at; at = at.parentElement) if (at.localName === 'details') at.open = true;
    if (target && target.localName === 'details') target.scrollIntoView();
  }

  document.addEventListener('DOMContentLoaded', function () {
    document.body.append(said);
    all('figure.fig[id]').forEach(function (figure) {
      var tag = figure.querySelector('figcaption .tag');
      var name = tag ? tag.textContent.trim().replace(/^F/, 'f') : 'this figure';
      figure.append(row(name, [['Link', 'Copy link to ' + name, function () { return address(figure.id); }]]));
    });
    all('.worked[data-sentence-si]').forEach(function (fold) {
      var list = fold.querySelector(':scope > dl'), what = fold.querySelector('.what').textContent.split(':')[0];
      list.after(texts(fold, 'the working of “' + what.trim() + '”'));
    });
    all('.answer[data-sentence-si]').forEach(function (answer) { answer.append(texts(answer, 'the short answer')); });
    addEventListener('hashchange', opened);
    opened();
  });
}());

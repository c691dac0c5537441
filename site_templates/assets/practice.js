// Practice problems: another variant, the answer check, the working. The page reads whole without this file.
// A problem carries its variants packed (deflate, base64): no secret, only out of sight until somebody asks.
(function () {
  'use strict';
  var NONE = '0,0,0,0,0', UNITS = Object.create(null), CALLED = {};
  var MARKS = Object.assign(Object.create(null), { '%': 'percent', '°': 'deg', 'µm': 'um', 'μm': 'um', times: '', x: '', '×': '', '1': '' });
  var PARTS = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };
  // A unit is its size in SI and the exponents of its dimension.
  Object.entries(window.answerUnits).forEach(function (entry) {
    CALLED[entry[0]] = entry[1][0];
    Object.entries(entry[1][1]).forEach(function (unit) { UNITS[unit[0]] = [unit[1]].concat(entry[0].split(',').map(Number)); });
  });

  function unpacked(text) {
    var bytes = Uint8Array.from(atob(text), function (letter) { return letter.charCodeAt(0); });
    return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate'))).json();
  }

  function escaped(text) { return text.replace(/&/g, '&amp;').replace(/</g, '&lt;'); }
  function dimension(unit) { return unit.slice(1).join(); }
  function times(a, b, power) {
    return a.map(function (each, i) { return i ? each + power * b[i] : each * Math.pow(b[0], power); });
  }

  // One name, in whatever case, with or without a plural s, or two names run together as in ftlb.
  // With forces, the trade's lb and kg are meant as forces, as in ft-lb; a kg by itself never is.
  function named(name, forces, alone) {
    name = name in MARKS ? MARKS[name] : name;
    if (!name) return [1, 0, 0, 0, 0, 0];
    if (forces) name = name.replace(/^(lbs?|lbm|pounds?)$/i, 'lbf').replace(/^kgs?$/i, 'kgf');
    var low = name.toLowerCase(), found = [name, name.replace(/s$/, ''), low, low.replace(/s$/, '')].concat(
      Object.keys(UNITS).filter(function (one) { return one.toLowerCase() === low; })
    ).find(function (one) { return one in UNITS; });
    if (found) return UNITS[found];
    for (var i = 1; i < name.length && !alone; i += 1) {
      var first = named(name.slice(0, i), forces, true), last = named(name.slice(i), forces, true);
      if (first && last) return times(first, last, 1);
    }
  }

  // "lbf·ft", "ft-lb", "N/mm"; nothing where a name is not known
  function unitOf(text, forces) {
    var power = 1, clean = text.replace(/\bper\b/gi, '/').replace(/\bpounds?[ -]force\b/gi, 'lbf').replace(/\.(?=\W|$)/g, '');
    if (/^kgs?$/i.test(clean.trim())) forces = false;
    return clean.split(/(\/)|[\s·⋅•*.-]+/).filter(Boolean).reduce(function (total, part) {
      if (part === '/') power = -1;
      var one = part === '/' ? [1, 0, 0, 0, 0, 0] : named(part, forces);
      return total && one && times(total, one, power);
    }, [1, 0, 0, 0, 0, 0]);
  }

  // The readings of a number: two where a comma may part thousands or decimals.
  function numbers(text) {
    var t = text.replace(/\s(?=\d{3}(\D|$))/g, ''), group = t.match(/^([-+]?\d{1,3}),(\d{3})$/);
    var sum = text.match(/^([-+]?)(?:(\d+)[ -]+)?(\d+)\/([1-9]\d*)$/);
    if (sum) return [(sum[1] === '-' ? -1 : 1) * (+(sum[2] || 0) + sum[3] / sum[4])];
    if (group) return [+(group[1] + group[2]), +(group[1] + '.' + group[2])];
    if (/^[-+]?\d{1,3}(,\d{3})+(\.\d*)?$/.test(t)) t = t.replace(/,/g, '');
    else if (/^[-+]?\d{1,3}(\.\d{3})+,\d+$/.test(t)) t = t.replace(/\./g, '');
    return /^[-+]?(\d+([.,]\d*)?|[.,]\d+)(e[-+]?\d+)?$/i.test(t) ? [parseFloat(t.replace(',', '.'))] : [];
  }

  // What a reader wrote: the readings of its number, and the text of its unit.
  function read(text) {
    var t = text.replace(/[\u00a0\u202f\u2009]/g, ' ').replace(/[−–]/g, '-').replace(/["″”]/g, ' in ').replace(/['′’]/g, ' ft ').trim();
    t = t.replace(/(\d?)\s*([½¼¾⅛⅜⅝⅞])/g, function (all, whole, part) { return (whole && whole + ' ') + PARTS[part]; });
    var feet = t.match(/^(\d+) ?(?:ft|foot|feet) +(\d.*?) ?(?:in|inch|inches)$/);
    var cut = t.match(/^([-+]? ?(?:\d+[ -]+\d+\/\d+|\d+\/\d+|\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?!\d)|[\d.,]*\d[.,]?(?:e[-+]?\d+)?))\s*(.*)$/i);
    if (feet && numbers(feet[2]).length) return { values: [12 * feet[1] + numbers(feet[2])[0]], unit: 'in' };
    return cut ? { values: numbers(cut[1].replace(/^([-+]) /, '$1')), unit: cut[2].trim() } : { values: [], unit: '' };
  }

  // What to say of a written answer: how near it is, a word, and the reason as HTML.
  function check(asked, text, way) {
    var written = read(text), values = written.values, want = asked.value, ways = asked.ways.length, named = written.unit;
    var like = asked.units.length ? 'Write it with its unit: ' + asked.units.join(', ') + '.' : 'It has no unit.';
    if (!values.length) return ['not', 'A number, please.', 'Write it like 12.5 or 3,400. ' + like];
    if (ways && values[0] < 0) return ['not', 'The size alone, please.', 'Choose its way beside it.'];
    if (ways && way < 0 && (want || values[0])) return ['not', 'And which way, please?', 'Choose it beside the number.'];
    var sign = ways && way ? -1 : 1;
    function near(size, target) { return Math.abs(size - target) <= asked.within * Math.max(1, Math.abs(target / want) || 0); }
    function sizes(unit) { return values.map(function (value) { return sign * value * unit[0]; }); }
    function right(unit) { return sizes(unit).some(function (size) { return near(size, want); }); }
    // a usual unit in which the number would be right, whatever stands beside it
    var fits = asked.units.find(function (name) { return right(unitOf(name)); });
    var unit = unitOf(named), asForce = unitOf(named, true);
    if (!unit && !asForce) return ['not', 'A unit that is known here, please.', like];
    if (!unit || dimension(unit) !== asked.dimension) unit = asForce;
    if (!named && asked.dimension !== NONE && (want || values[0])) {
      return fits ? ['near', 'The number is right.', 'Say in which unit: ' + fits + '.'] : ['not', 'With its unit, please.', like];
    }
    if (named && dimension(unit) !== asked.dimension) {
      return [fits ? 'near' : 'not', (fits ? 'Right number, wrong' : 'Wrong') + ' unit.', '“' + escaped(named) + '” goes with ' +
        (CALLED[dimension(unit)] || 'something else') + '; the question asks for ' + (CALLED[asked.dimension] || 'something else') + '.'];
    }
    if (right(unit)) return ['right', 'That is it.', asked.right];
    var size = sizes(unit)[0], slip = asked.slips.find(function (one) { return Math.abs(size - one[0]) <= asked.within; });
    if (slip) return ['near', 'Nearly.', slip[1]];
    if (fits && want) return ['near', 'Right number, wrong unit.', 'It would be right in ' + fits + '.'];
    if (want && near(size, -want)) return ['near', ways ? 'Right size, the other way.' : 'Right size, wrong sign.'];
    return want ? apart(size, want, near) : ['not', 'Not yet.', 'Too large.'];
  }

  // How far off, in words coarse enough to leave the work to the reader.
  function apart(size, want, near) {
    var ratio = size / want, over = ratio > 1, off = Math.abs(ratio - 1), tens = Math.log10(ratio);
    var much = over ? 'Too large' : 'Too small', factor = over ? ratio : 1 / ratio;
    if (near(size, 2 * want)) return ['near', 'Twice the answer.', 'Look for a half that was left out, or for something counted on both sides.'];
    if (near(size, want / 2)) return ['near', 'Half the answer.', 'Look for a half too many, or for a second side that was left out.'];
    if (ratio < 0) return ['not', 'Not yet.', 'It goes the other way, and its size is not right either.'];
    if (off < 0.03) return ['near', 'Very near.', 'Check the rounding: keep four digits until the last line.'];
    if (Math.abs(tens) > 0.9 && Math.abs(tens - Math.round(tens)) < 0.004) {
      return ['near', 'The digits are right.', much + ': look at the decimal point, and at kilo and milli.'];
    }
    if (off < 0.1) return ['near', 'Within a tenth.', much + ' by about ' + Math.round(100 * off) + ' %.'];
    if (off < 0.6) return ['not', 'Not yet.', much + ' by about ' + 10 * Math.round(10 * off) + ' %.'];
    return ['not', 'Not yet.', much + (factor > 15 ? ', by far.' : ', by a factor of about ' + [2, 3, 5, 10].find(function (one) { return factor < 1.45 * one || one === 10; }) + '.')];
  }

  function problem(form) {
    var out = form.querySelector('output'), box = form.elements.answer, way = form.elements.way, place = 0, data;
    var working = form.querySelector('[data-working]'), nudges = form.querySelectorAll('[data-nudge]');
    // all variants, unpacked when first asked for
    function variants(use) {
      try { data = data || unpacked(form.dataset.practice); } catch (e) { data = Promise.reject(e); }
      data.then(use, function () { say('not', 'This browser is too old to unpack the answers.'); });
    }
    function say(state, head, reason) {
      out.dataset.state = state;
      out.innerHTML = '<b>' + head + '</b> ' + (reason || '');
    }
    // the page looks for boxes that scroll whenever its size changes
    function settled() { dispatchEvent(new Event('resize')); }
    form.querySelector('[data-another]').addEventListener('click', function () {
      variants(function (all) {
        place = (place + 1) % all.length;
        form.querySelector('[data-which]').textContent = place + 1;
        form.querySelector('.question').innerHTML = all[place].question;
        nudges.forEach(function (fold, i) { fold.lastElementChild.innerHTML = all[place].nudges[i]; fold.open = false; });
        (all[place].options || []).forEach(function (option, i) { form.querySelectorAll('.options label')[i].innerHTML = option[0]; });
        working.open = false;
        working.lastElementChild.replaceChildren();
        form.reset();
        if (box) box.removeAttribute('aria-invalid');
        say('', '', 'Variant ' + (place + 1) + ' of ' + all.length + '.');
        settled();
      });
    });
    working.addEventListener('toggle', function () {
      var body = working.lastElementChild;
      if (working.open && !body.hasChildNodes()) variants(function (all) {
        body.innerHTML = all[place].working;
        body.querySelectorAll('details').forEach(function (fold) { fold.open = true; });
        settled();
      });
    });
    form.addEventListener('submit', function (e) {
      e.preventDefault();
      variants(function (all) {
        var asked = all[place], picked = form.querySelector('.options input:checked');
        if (asked.options) {
          var option = picked && asked.options[picked.value];
          return option ? say(option[1] ? 'right' : 'not', option[1] ? 'That is it.' : 'Not that one.', option[1] ? '' : option[2]) : say('not', 'Choose one, please.');
        }
        var said = check(asked, box.value, way ? way.selectedIndex - 1 : -1), wanting = /please/.test(said[1]);
        say(said[0], said[1], said[2]);
        if (wanting) box.setAttribute('aria-invalid', 'true'); else box.removeAttribute('aria-invalid');
        if (wanting) (/way/.test(said[1]) ? way : box).focus();
      });
    });
  }

  document.querySelectorAll('form[data-practice]').forEach(problem);
}());

// Without this script the page says everything; with it the reader may choose a theme, stretch the timeline and read values off it.
(function () {
  'use strict';
  var root = document.documentElement;
  var THEME = 'roundstar-theme';

  // A page opened from a file may not be allowed to remember.
  function remembered() {
    try {
      return localStorage.getItem(THEME) || '';
    } catch (e) {
      return '';
    }
  }

  function dress(theme) {
    if (theme) {
      root.dataset.theme = theme;
    } else {
      delete root.dataset.theme;
    }
  }

  function offerThemes() {
    var choice = document.getElementById('theme');
    choice.value = remembered();
    choice.addEventListener('change', function () {
      dress(choice.value);
      try {
        localStorage.setItem(THEME, choice.value);
      } catch (e) {
        // The choice then lasts as long as the page.
      }
    });
    choice.closest('label').hidden = false;
  }

  function closeContentsAfterUse() {
    var contents = document.querySelector('.contents details');
    contents.addEventListener('click', function (event) {
      if (event.target.closest('a')) {
        contents.open = false;
      }
    });
    document.addEventListener('keydown', function (event) {
      if (event.key === 'Escape' && contents.open) {
        contents.open = false;
        contents.querySelector('summary').focus();
      }
    });
  }

  // A link into a folded section opens it, also when it is followed a second time.
  function open(id) {
    var target = document.getElementById(id);
    var folded = target && target.closest('main details');
    if (folded && !folded.open) {
      folded.open = true;
      target.scrollIntoView();
    }
  }

  function openTargets() {
    open(location.hash.slice(1));
    window.addEventListener('hashchange', function () {
      open(location.hash.slice(1));
    });
    document.addEventListener('click', function (event) {
      var link = event.target.closest('a[href^="#"]');
      if (link) {
        open(link.hash.slice(1));
      }
    });
  }

  // By keyboard the list is copied as any text; the button saves selecting it.
  function offerCopying() {
    document.querySelectorAll('.listing button').forEach(function (button) {
      var text = button.parentNode.querySelector('textarea');
      button.addEventListener('click', function () {
        text.focus();
        text.select();
        var done = document.execCommand('copy');
        button.textContent = done ? 'Copied' : 'Selected: copy it with the keyboard';
      });
      button.hidden = false;
    });
  }

  // A cell's number, or its words where it begins with none.
  function keyOf(cell) {
    var text = cell.textContent.trim().replace('\u2212', '-');
    var number = parseFloat(text);
    return cell.classList.contains('n') && Number.isFinite(number) ? number : text;
  }

  function compared(one, other) {
    if (typeof one !== typeof other) {
      return typeof one === 'number' ? -1 : 1;
    }
    return one < other ? -1 : one > other ? 1 : 0;
  }

  // Tables of nights are sorted by the column whose heading is pressed, a second time the other way.
  function offerSorting() {
    document.querySelectorAll('table.sortable').forEach(function (table) {
      var body = table.tBodies[0];
      table.querySelectorAll('thead th').forEach(function (heading, column) {
        var button = document.createElement('button');
        button.type = 'button';
        button.append(...heading.childNodes);
        heading.append(button);
        button.addEventListener('click', function () {
          var turn = heading.getAttribute('aria-sort') === 'ascending' ? -1 : 1;
          table.querySelectorAll('thead th').forEach(function (other) {
            other.removeAttribute('aria-sort');
          });
          heading.setAttribute('aria-sort', turn > 0 ? 'ascending' : 'descending');
          Array.from(body.rows)
            .sort(function (a, b) {
              return turn * compared(keyOf(a.cells[column]), keyOf(b.cells[column]));
            })
            .forEach(function (row) {
              body.append(row);
            });
        });
      });
    });
  }

  // Pairs of coordinates in a path, rewritten or just seen.
  function eachPair(d, see) {
    return d.replace(/(-?[\d.]+)([ ,])(-?[\d.]+)/g, function (all, x, between, y) {
      var to = see(+x, +y);
      return to === undefined ? all : Math.round(to * 100) / 100 + between + y;
    });
  }

  // Points of every line drawn in one colour, in the chart's units.
  function pointsOf(svg, colour) {
    var points = [];
    svg.querySelectorAll('path[stroke="var(--' + colour + ')"]').forEach(function (path) {
      eachPair(path.getAttribute('d'), function (x, y) {
        points.push([x, y]);
      });
    });
    return points.sort(function (a, b) {
      return a[0] - b[0];
    });
  }

  function nearest(points, x) {
    var low = 0;
    var high = points.length - 1;
    while (high - low > 1) {
      var middle = (low + high) >> 1;
      if (points[middle][0] < x) {
        low = middle;
      } else {
        high = middle;
      }
    }
    if (high < 0) {
      return undefined;
    }
    return Math.abs(points[low][0] - x) < Math.abs(points[high][0] - x) ? points[low] : points[high];
  }

  function Timeline(figure, svg) {
    this.figure = figure;
    this.svg = svg;
    this.left = +svg.dataset.left;
    this.right = +svg.dataset.right;
    this.width = svg.viewBox.baseVal.width;
    this.height = svg.viewBox.baseVal.height;
    this.zoom = 1;
    this.lanes = JSON.parse(svg.dataset.lanes).map(function (lane) {
      lane.points = pointsOf(svg, lane.colour);
      return lane;
    });
    this.shapes = Array.from(svg.querySelectorAll('path,text,line')).map(function (node) {
      return {
        node: node,
        d: node.getAttribute('d'),
        x: +node.getAttribute('x'),
        ends: node.tagName === 'line' ? [+node.getAttribute('x1'), +node.getAttribute('x2')] : undefined
      };
    });
  }

  // Where a place of the unstretched chart goes.
  Timeline.prototype.placed = function (x) {
    return x <= this.left ? x : this.left + (x - this.left) * this.zoom;
  };

  // Small closed shapes are marks: they move and keep their form. All else is stretched along time.
  Timeline.prototype.stretched = function (d) {
    var self = this;
    return d.replace(/M[^M]*/g, function (part) {
      var xs = [];
      eachPair(part, function (x) {
        xs.push(x);
      });
      var least = Math.min(...xs);
      var most = Math.max(...xs);
      var mark = most - least <= 14 && xs.length <= 6;
      var shift = self.placed((least + most) / 2) - (least + most) / 2;
      return eachPair(part, function (x) {
        return mark ? x + shift : self.placed(x);
      });
    });
  };

  Timeline.prototype.move = function (shape) {
    var self = this;
    if (shape.d) {
      shape.node.setAttribute('d', this.stretched(shape.d));
    } else if (shape.ends) {
      shape.ends.forEach(function (x, i) {
        shape.node.setAttribute('x' + (i + 1), self.placed(x));
      });
    } else if (Math.abs(shape.x - this.left) > 1) {
      var half = shape.node.getComputedTextLength() / 2;
      shape.node.setAttribute('x', this.placed(shape.x + half) - half);
    }
  };

  // Only one of the forms of a chart is shown at a time.
  Timeline.prototype.shownNow = function () {
    return this.svg.getClientRects().length > 0;
  };

  Timeline.prototype.stretch = function (zoom) {
    if (this.zoom === 1) {
      this.shown = this.svg.getBoundingClientRect().width;
    }
    var middle = (this.figure.scrollLeft + this.figure.clientWidth / 2) / this.figure.scrollWidth;
    var wide = this.width + (this.right - this.left) * (zoom - 1);
    this.zoom = zoom;
    this.svg.setAttribute('viewBox', '0 0 ' + wide + ' ' + this.height);
    this.svg.style.width = zoom === 1 ? '' : (this.shown * wide) / this.width + 'px';
    this.shapes.forEach(this.move, this);
    this.cursor.setAttribute('d', '');
    this.figure.scrollLeft = middle * this.figure.scrollWidth - this.figure.clientWidth / 2;
  };

  Timeline.prototype.time = function (x) {
    var share = (x - this.left) / (this.right - this.left);
    var seconds = +this.svg.dataset.low + share * (+this.svg.dataset.high - this.svg.dataset.low);
    if (!this.svg.dataset.start) {
      return (seconds / 60).toFixed(1) + ' min';
    }
    var local = this.svg.dataset.local;
    return this.clock(seconds) + ' UTC' + (local ? ' (' + this.clock(seconds + +local) + ')' : '');
  };

  Timeline.prototype.clock = function (seconds) {
    return new Date(Date.parse(this.svg.dataset.start) + seconds * 1000).toISOString().slice(11, 19);
  };

  // x on the unstretched chart.
  Timeline.prototype.read = function (x) {
    var at = Math.min(this.right, Math.max(this.left, x));
    this.at = at;
    var words = this.lanes.map(function (lane) {
      var point = nearest(lane.points, at);
      if (!point || Math.abs(point[0] - at) > 3) {
        return lane.name + ' no frame';
      }
      var value = lane.high - ((point[1] - lane.top) / (lane.bottom - lane.top)) * (lane.high - lane.low);
      return lane.name + ' ' + value.toFixed(2).replace('-', '\u2212') + ' arcsec';
    });
    this.out.textContent = this.time(at) + ': ' + words.join(', ');
    this.cursor.setAttribute('d', 'M' + this.placed(at) + ',0V' + this.height);
  };

  Timeline.prototype.offer = function () {
    var self = this;
    this.cursor = document.createElementNS('http://www.w3.org/2000/svg', 'path');
    this.cursor.setAttribute('stroke', 'var(--quiet)');
    this.svg.appendChild(this.cursor);
    var tools = document.getElementById('timeline-tools');
    this.out = tools.querySelector('output');
    tools.addEventListener('click', function (event) {
      var factor = event.target.dataset && event.target.dataset.zoom;
      if (factor && self.shownNow()) {
        self.stretch(factor === 'all' ? 1 : Math.min(16, Math.max(1, self.zoom * factor)));
      }
    });
    this.svg.addEventListener('pointermove', function (event) {
      var box = self.svg.getBoundingClientRect();
      var x = ((event.clientX - box.left) / box.width) * self.svg.viewBox.baseVal.width;
      self.read(self.left + (x - self.left) / self.zoom);
    });
    this.figure.addEventListener('keydown', function (event) {
      var step = {ArrowLeft: -1, ArrowRight: 1}[event.key];
      if (step && self.shownNow() && !event.altKey && !event.ctrlKey && !event.metaKey) {
        self.read((self.at || self.left) + step / self.zoom);
        event.preventDefault();
      }
    });
    tools.hidden = false;
  };

  dress(remembered());
  document.addEventListener('DOMContentLoaded', function () {
    offerThemes();
    closeContentsAfterUse();
    openTargets();
    offerSorting();
    offerCopying();
    document.querySelectorAll('#timeline svg[data-lanes]').forEach(function (svg) {
      new Timeline(svg.parentNode, svg).offer();
    });
  });
})();

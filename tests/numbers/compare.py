#!/usr/bin/python3
"""Compares all numbers of two outputs of the project, whatever the words around them.

    compare.py BEFORE AFTER REVIEWED

BEFORE and AFTER are folders that .ci/numbers has filled: the list of checks against published values, the circuits of the
independent program, and the reports of the notebooks. REVIEWED lists changes that are meant; see there. Prints each number that
changed with its place, and ends with 1 where one is not among those that are meant.
"""

import collections
import difflib
import fnmatch
import glob
import html.parser
import json
import os
import re
import sys

# Of a number: what the solver's last step leaves. Only circuits have so many figures that it shows.
ROUNDING = 1e-9
WORDS = 7
MOST_ALONE = 40
MOST_PRINTED = 600

SUPERSCRIPTS = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻", "0123456789-")
# Digits that follow a letter belong to a name (E85) or a unit (m^3); a hyphen after a word or number is no sign.
NUMBER = re.compile(r"(?:(?<![\w)\].^])-)?(?<![\w.^])\d+(?:,\d{3})*(?:\.\d+)?(?:[eE][+-]?\d+(?!\w))?(?:\^-?\d+)?")

# Of the run, which the head of a report says.
TIME_TAKEN = re.compile(r"(\bcells, )\d+(?:\.\d+)? (?:s|min)\b")


class Text(html.parser.HTMLParser):
    """The text of a page, also of its drawings, and the labels that a screen reader gets; no styles, no coordinates."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.pieces = []
        self.skipped = 0

    def handle_starttag(self, tag, attributes):
        self.skipped += tag in ("style", "script")
        self.pieces += [value for name, value in attributes if name in ("aria-label", "title", "alt") and value]

    def handle_startendtag(self, tag, attributes):
        pass

    def handle_endtag(self, tag):
        self.skipped -= tag in ("style", "script")

    def handle_data(self, data):
        if not self.skipped:
            self.pieces.append(data)


def plain(text):
    """One way to write signs, spaces and powers."""
    text = text.replace("−", "-").replace("\u00ad", "")
    text = re.sub("[⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+", lambda power: "^" + power.group().translate(SUPERSCRIPTS), text)
    return re.sub(r"\s+", " ", text)


def numbers_of_report(path):
    """Each number of a report in order, and the words around it."""
    page = Text()
    with open(path, encoding="utf-8") as file:
        page.feed(file.read())
    text = TIME_TAKEN.sub(r"\1", plain(" ".join(page.pieces)))
    found = []
    for match in NUMBER.finditer(text):
        before = " ".join(text[max(0, match.start() - 120):match.start()].split()[-WORDS:])
        after = " ".join(text[match.end():match.end() + 120].split()[:WORDS])
        found.append((match.group().replace(",", ""), before, after))
    return found


def compare_reports(before, after):
    """Changes of one report: (what, where)."""
    old, new = numbers_of_report(before), numbers_of_report(after)
    a, b = [each[0] for each in old], [each[0] for each in new]
    matcher = difflib.SequenceMatcher(None, a, b, autojunk=False)
    opcodes = [each for each in matcher.get_opcodes() if each[0] != "equal"]
    gone = collections.Counter(x for _, i, j, _, _ in opcodes for x in a[i:j])
    come = collections.Counter(x for _, _, _, i, j in opcodes for x in b[i:j])
    moved = gone & come
    changes = []
    for _, i1, i2, j1, j2 in opcodes:
        same_length = i2 - i1 == j2 - j1
        groups = (
            [(i, i + 1, j, j + 1) for i, j in zip(range(i1, i2), range(j1, j2))] if same_length else [(i1, i2, j1, j2)])
        for p, q, r, s in groups:
            what = f"{' '.join(a[p:q]) or '(none)'} → {' '.join(b[r:s]) or '(none)'}"
            all_moved = not (collections.Counter(a[p:q]) - moved) and not (collections.Counter(b[r:s]) - moved)
            here, last = (old[p], old[q - 1]) if q > p else (new[r], new[s - 1])
            place = f"… {here[1]} [{what}] {last[2]} …"
            if q > p and s > r:
                place += f"  (after: … {new[r][1]} … {new[s - 1][2]} …)"
            changes.append((what + (" (moved)" if all_moved else ""), place))
    return changes, len(a)


def tokens(value, path=""):
    """Numbers and gaps of a JSON value in order, each with its path."""
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from tokens(inner, f"{path}.{key}")
    elif isinstance(value, list):
        for place, inner in enumerate(value):
            yield from tokens(inner, f"{path}[{place}]")
    elif value is None or (isinstance(value, (int, float)) and not isinstance(value, bool)):
        yield value, path


def close(a, b):
    if a is None or b is None:
        return a is b
    return abs(a - b) <= ROUNDING * max(abs(a), abs(b))


def compare_circuits(before, after):
    with open(before, encoding="utf-8") as file:
        old = json.load(file)
    with open(after, encoding="utf-8") as file:
        new = json.load(file)
    changes, count, rounded, largest = [], 0, 0, 0.0
    if len(old) != len(new):
        changes.append((f"{len(old)} → {len(new)}", "number of circuits"))
    for one, other in zip(old, new):
        a, b = list(tokens(one)), list(tokens(other))
        count += len(a)
        if len(a) == len(b):
            pairs = list(zip(a, b))
        else:
            changes.append((f"{len(a)} → {len(b)}", f"how many numbers has: {one['name']}"))
            matcher = difflib.SequenceMatcher(None, [repr(x) for x, _ in a], [repr(x) for x, _ in b], autojunk=False)
            pairs = [
                (a[i] if i < i2 else ("none", ""), b[j] if j < j2 else ("none", ""))
                for tag, i1, i2, j1, j2 in matcher.get_opcodes() if tag != "equal"
                for i, j in zip(range(i1, i1 + max(i2 - i1, j2 - j1)), range(j1, j1 + max(i2 - i1, j2 - j1)))]
        for (x, path), (y, other_path) in pairs:
            if x == y:
                continue
            if "none" not in (x, y) and close(x, y):
                rounded += 1
                if x is not None:
                    largest = max(largest, abs(x - y) / max(abs(x), abs(y)))
            else:
                changes.append((f"{x} → {y}", f"{one['name']}: {path or other_path}"))
    note = f"{rounded} of them by rounding, at most {largest:.1g} of the number" if rounded else ""
    return changes, count, note


def rows(path):
    """A row for each check; as on the page, one for all of a test that makes more than forty against one source, since it draws them."""
    groups = collections.defaultdict(list)
    with open(path, encoding="utf-8") as file:
        for line in file:
            row = line.rstrip("\n").split("\t")
            groups[row[0], row[1], row[2], row[6]].append(tuple(row))
    result = []
    for (subject, test, source, allowed), checks in groups.items():
        if len(checks) > MOST_ALONE:
            worst = max((row[5] for row in checks), key=lambda share: 0 if share[0] == "<" or share == "NaN" else float(share.split()[0]))
            checks = [(subject, test, source, f"{len(checks)} values", "", worst, allowed)]
        result += checks
    return result


def compare_validation(before, after):
    """Rows are matched by their numbers, since titles and sources may be worded anew; new checks are no change."""
    numbers = lambda row: row[3:7]
    old, new = rows(before), rows(after)
    gone = collections.Counter(map(numbers, old)) - collections.Counter(map(numbers, new))
    come = collections.Counter(map(numbers, new)) - collections.Counter(map(numbers, old))
    left = []
    for row in new:
        if come[numbers(row)] > 0:
            come[numbers(row)] -= 1
            left.append(row)
    changes = []
    for row in old:
        if gone[numbers(row)] == 0:
            continue
        gone[numbers(row)] -= 1
        # Of the new rows the likeliest: of the same source and published value, then of the same value and test, then of the value.
        other = next(
            (each for same in ((2, 3), (1, 3), (3, 6), (2, 6)) for each in left if all(each[i] == row[i] for i in same)), None)
        place = f"{row[0]}: {row[1]}; {row[2]}"
        if other is None:
            changes.append((f"published {row[3]}, computed {row[4]} → (none)", place))
        else:
            left.remove(other)
            names = ("published", "computed", "deviation", "allowed")
            what = ", ".join(f"{name} {x} → {y}" for name, x, y in zip(names, row[3:7], other[3:7]) if x != y)
            changes.append((what, place))
    note = f"{len(left)} new checks" if left else ""
    return changes, 4 * len(old), note


def short(text):
    return text if len(text) <= MOST_PRINTED else f"{text[:MOST_PRINTED // 2]} ..... {text[-MOST_PRINTED // 2:]}"


def reviewed(path):
    """File, change and reason of each line: the change as it is printed, or /a regular expression/ on the line printed."""
    entries = []
    if os.path.exists(path):
        with open(path, encoding="utf-8") as file:
            for line in file:
                if line.strip() and not line.startswith("#"):
                    where, what, reason = (part.strip() for part in re.split(r"\s\|\s", line, maxsplit=2))
                    entries.append((where, what, reason))
    return entries


def meant(entries, name, what, place):
    for entry in entries:
        where, change, _ = entry
        pattern = change[1:-1] if len(change) > 2 and change[0] == change[-1] == "/" else None
        if fnmatch.fnmatch(name, where) and (re.search(pattern, f"{what}  {place}") if pattern else change == what):
            return entry
    return None


def main(before, after, review):
    compared = []
    for name, compare in (("validation.v10.0", compare_validation), ("circuits.json", compare_circuits)):
        compared.append((name, *compare(os.path.join(before, name), os.path.join(after, name))))
    names = lambda folder: {os.path.basename(path) for path in glob.glob(os.path.join(folder, "reports", "*.html"))}
    if not names(before):
        sys.exit(f"{before} has no reports.")
    for name in sorted(names(before) | names(after)):
        if name not in names(after) or name not in names(before):
            compared.append((name, [("report", "gone" if name in names(before) else "new")], 0, ""))
            continue
        compared.append((name, *compare_reports(*(os.path.join(folder, "reports", name) for folder in (before, after))), ""))

    entries = reviewed(review)
    used, total, unmeant, known = set(), 0, 0, 0
    for name, changes, count, note in compared:
        total += count
        print(f"{name}: {count:,} numbers, {len(changes)} changed{'; ' + note if note else ''}")
        for what, place in changes:
            entry = meant(entries, name, what, place)
            if entry:
                used.add(entry)
                known += 1
            else:
                unmeant += 1
            print(f"  {'meant' if entry else 'CHANGED'}: {short(what)}\n      {short(place)}" + (f"\n      because: {entry[2]}" if entry else ""))
    for entry in entries:
        if entry not in used:
            print(f"note: nothing changed as {review} says: {' | '.join(entry)}")
    print(f"{total:,} numbers compared: {known} changed as meant, {unmeant} otherwise.")
    return 1 if unmeant else 0


if __name__ == "__main__":
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    sys.exit(main(*sys.argv[1:]))

"""A second reader of the exchange file, written from core/src/paper/FORMAT.md and entry.schema.json with nothing but
Python's standard library. For each path on standard input, one to a line, it prints one line of JSON: what the file
comes to, or why it is refused. The schema's path is its one argument."""

import hashlib
import json
import math
import re
import struct
import sys
import unicodedata
import zlib

MB = 10**6
SIDES = ("readings.csv", "READ-ME.txt")
DIGEST = re.compile(r"[0-9a-f]{64}")
ONE_THREAD = ("vehicle", "wheel", "limit", "decision", "same-as", "marks", "round", "tyring")

with open(sys.argv[1], encoding="utf-8") as file:
    SCHEMA = json.load(file)
DEFS = SCHEMA["$defs"]
KINDS = SCHEMA["properties"]["kind"]["examples"]


class Refused(Exception):
    pass


def need(holds, why):
    if not holds:
        raise Refused(why)


def is_digest(text):
    return isinstance(text, str) and DIGEST.fullmatch(text) is not None


def digest(data):
    return hashlib.sha256(data).hexdigest()


# 1. The container


def records(data):
    """The members of a ZIP, as its list at the end has them."""
    need(0 < len(data) <= 1000 * MB, "size of the file")
    end = data.rfind(b"PK\x05\x06")
    need(end >= 0 and end + 22 <= len(data), "no end")
    _, _, _, _, count, length, start, remark = struct.unpack("<4s4H2IH", data[end : end + 22])
    need(end + 22 + remark <= len(data), "the end is cut off")
    at, found = end - length, []
    shift = at - start
    need(at >= 0 and shift >= 0, "the list does not lie where the end says")
    need(length <= 16 * MB, "a list longer than any honest one")
    while at < end:
        need(data[at : at + 4] == b"PK\x01\x02" and at + 46 <= end, "the list is damaged")
        fields = struct.unpack("<6H3I5H2I", data[at + 4 : at + 46])
        flags, method, crc, packed, size, name, extra, note = fields[2], fields[3], *fields[6:12]
        need(at + 46 + name + extra + note <= end, "the list is damaged")
        raw = data[at + 46 : at + 46 + name]
        found.append(
            {"raw": raw, "flags": flags, "method": method, "crc": crc, "packed": packed,
             "size": size, "at": fields[-1] + shift}
        )
        at += 46 + name + extra + note
        need(len(found) <= 20_000, "too many members")
    need(len(found) == count, "another number of members")
    return found


def name_of(raw):
    try:
        name = raw.decode("utf-8")
    except UnicodeDecodeError:
        raise Refused("a name is not UTF-8")
    safe = 0 < len(raw) <= 255 and not any(unicodedata.category(c) == "Cc" for c in name)
    safe = safe and "\\" not in name and name[0] != "/" and name[1:2] != ":"
    need(safe and ".." not in name.split("/"), "a name is not safe")
    return name


def locate(data, member):
    """Where the packed bytes of a member lie."""
    at = member["at"]
    need(data[at : at + 4] == b"PK\x03\x04" and at + 30 <= len(data), "no header of its own")
    flags, method = struct.unpack("<2H", data[at + 6 : at + 10])
    name, extra = struct.unpack("<2H", data[at + 26 : at + 30])
    need(not (flags | member["flags"]) & 1, "locked")
    need(method == member["method"] and method in (0, 8), "method")
    need(data[at + 30 : at + 30 + name] == member["raw"], "another name")
    start = at + 30 + name + extra
    need(start + member["packed"] <= len(data), "it lies outside")
    return start, start + member["packed"]


def unpack(data, member, allowed):
    start, end = locate(data, member)
    packed, size = data[start:end], member["size"]
    need(size <= allowed and size <= 200 * len(packed), "too large")
    if member["method"] == 8:
        inflate = zlib.decompressobj(-15)
        try:
            packed = inflate.decompress(packed, size + 1)
        except zlib.error:
            raise Refused("not deflated")
        # With a byte to spare, what is of the right size but goes on is seen to go on.
        need(inflate.eof, "not whole")
    need(len(packed) == size, "another size")
    need(zlib.crc32(packed) == member["crc"], "another CRC")
    return packed


# 3. JSON, strictly


class Number(str):
    """A number as it was written."""

    def whole(self):
        return int(self) if self.isascii() and self.isdigit() and int(self) < 2**64 else None


def parse(text):
    def number(text):
        need(math.isfinite(float(text)), "a number beyond measure")
        return Number(text)

    def constant(text):
        raise Refused("no JSON")

    def fields(pairs):
        need(len(dict(pairs)) == len(pairs), "a field stands twice")
        return dict(pairs)

    try:
        value = json.loads(
            text, parse_int=number, parse_float=number, parse_constant=constant, object_pairs_hook=fields
        )
    except (ValueError, RecursionError):
        raise Refused("no JSON")
    need(whole_signs(value), "half of a pair")
    return value


def brackets(value):
    """How deep brackets are nested."""
    if isinstance(value, (list, dict)):
        inner = value.values() if isinstance(value, dict) else value
        return 1 + max(map(brackets, inner), default=0)
    return 0


def levels(value):
    """The same with a value that is none counted too."""
    if isinstance(value, (list, dict)) and value:
        inner = value.values() if isinstance(value, dict) else value
        return 1 + max(map(levels, inner))
    return 1


def whole_signs(value):
    if isinstance(value, Number):
        return True
    if isinstance(value, str):
        return not any("\ud800" <= c <= "\udfff" for c in value)
    if isinstance(value, list):
        return all(map(whole_signs, value))
    if isinstance(value, dict):
        return all(whole_signs(name) and whole_signs(inner) for name, inner in value.items())
    return True


def utf8(data, what):
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        raise Refused(f"{what} is not UTF-8")


def is_text(value):
    return isinstance(value, str) and not isinstance(value, Number)


def whole(value):
    return value.whole() if isinstance(value, Number) else None


# 2 and 3. The members and the manifest


def read_manifest(data):
    manifest = parse(utf8(data, "the manifest"))
    need(levels(manifest) <= 100, "nested too deep")
    need(isinstance(manifest, dict) and manifest.get("format") == "cartside exchange", "format")
    need(is_text(manifest["format"]) and whole(manifest.get("container")) == 1, "container")
    for claim in ("made_at", "device"):
        text = manifest.get(claim)
        need(is_text(text) and len(text.encode()) <= 64, claim)
    for count in ("entries", "pictures"):
        need(whole(manifest.get(count)) is not None, count)
    need(isinstance(manifest.get("members"), list), "members")
    listed = {}
    for member in manifest["members"]:
        need(isinstance(member, dict) and is_text(member.get("name")), "a listed member")
        need(whole(member.get("bytes")) is not None and is_digest(member.get("sha256")), "a listed member")
        need(member["name"] not in listed, "listed twice")
        listed[member["name"]] = (whole(member["bytes"]), str(member["sha256"]))
    return manifest, listed


def picture_of(name):
    inner = name[len("pictures/") : -len(".jpg")]
    return inner if name == f"pictures/{inner}.jpg" and is_digest(inner) else None


def as_listed(data, member, listed, allowed):
    found = unpack(data, member, allowed)
    need((len(found), digest(found)) == listed, "not as listed")
    return found


def read_file(data):
    members = {}
    for member in records(data):
        name = name_of(member["raw"])
        if not name.endswith("/"):
            need(name not in members, "two members of one name")
            members[name] = member
    need("manifest.json" in members, "no manifest")
    manifest, listed = read_manifest(unpack(data, members["manifest.json"], 8 * MB))
    warnings, together, places, pictures, entries = [], 0, [], {}, None
    for name in listed:
        if name not in members and name != "entries.jsonl":
            need(picture_of(name) is None, "a picture is missing")
            warnings.append(["listed but absent", name])
    for name, member in members.items():
        bears = name == "entries.jsonl" or picture_of(name) is not None
        if name == "manifest.json":
            continue
        if name not in listed or not bears and name not in SIDES:
            need(name != "entries.jsonl", "entries are not listed")
            warnings.append(["left out", name])
        elif bears:
            together += member["size"]
            places.append(locate(data, member))
        else:
            try:
                as_listed(data, member, listed[name], 256 * MB)
            except Refused:
                warnings.append(["not as listed", name])
    places.sort()
    need(all(one[1] <= other[0] for one, other in zip(places, places[1:])), "two share bytes")
    need(together <= 1000 * MB, "too large together")
    for name, member in members.items():
        if name == "entries.jsonl":
            entries = as_listed(data, member, listed[name], 256 * MB)
        elif picture_of(name) is not None and name in listed:
            pictures[picture_of(name)] = as_listed(data, member, listed[name], 16 * MB)
    for name, picture in pictures.items():
        need(picture.startswith(b"\xff\xd8\xff") and digest(picture) == name, "not that picture")
    need(entries is not None, "no entries")
    book, lines = read_lines(utf8(entries, "entries.jsonl"))
    need(whole(manifest["entries"]) == lines, "another number of lines")
    need(whole(manifest["pictures"]) == len(pictures), "another number of pictures")
    if lines > len(book):
        warnings.append(["repeated", str(lines - len(book))])
    return book, warnings + of_pictures(book, pictures)


def of_pictures(book, pictures):
    said = [entry for entry in book.values() if entry["said"] is not None]
    spoken = {entry["said"]["sha256"] for entry in said if entry["kind"] == "picture"}
    erased = {entry["slot"] for entry in said if entry["kind"] == "erasure"}
    absent = [["absent", name] for name in spoken - set(pictures) - erased]
    return absent + [["unused", name] for name in set(pictures) - spoken]


# 4. Lines


def read_lines(text):
    lines = text.split("\n")
    if lines[-1] == "":
        lines.pop()
    book = {}
    for line in lines:
        entry = read_line(line)
        book[entry["id"]] = entry
    return book, len(lines)


class Fields:
    """The fields of an object, taken one by one."""

    def __init__(self, fields):
        self.fields = dict(fields)

    def take(self, name, form, must=False):
        need(name in self.fields or not must, f"{name} is missing")
        if name not in self.fields:
            return None
        value = self.fields.pop(name)
        need(form(value), f"{name} is not of its form")
        return value


def is_list_of(form):
    return lambda value: isinstance(value, list) and all(map(form, value))


def within(least, greatest):
    return lambda value: isinstance(value, Number) and least <= float(value) <= greatest


def is_size(value):
    return whole(value) is not None and whole(value) < 2**32


def is_object(value):
    return isinstance(value, dict)


def matches(pattern):
    pattern = re.compile(pattern.replace("$", r"\Z"), re.ASCII)
    return lambda value: is_text(value) and pattern.match(value) is not None


is_length = within(-20_000, 20_000)
is_share = within(0, 100)
is_time = matches(SCHEMA["properties"]["at"]["pattern"])
is_day = matches(DEFS["decision"]["properties"]["look_again"]["pattern"])


def slot_is(name):
    """Whether a slot is one of the schema's; a part's number goes to 65 535."""
    form = matches(DEFS[name]["pattern"])
    return lambda slot: form(slot) and all(int(n) < 2**16 for n in re.findall(r"[0-9]+", slot))


def read_line(line):
    need(len(line.encode()) <= 65_536 and "\r" not in line, "a line too long, or broken")
    parsed = parse(line)
    need(isinstance(parsed, dict) and brackets(parsed) <= 16, "a line is no object, or nested too deep")
    fields = Fields(parsed)
    form = whole(fields.take("cartside", lambda value: (whole(value) or 0) > 0, True))
    entry = {"id": digest(line.encode())}
    for name in ("kind", "slot", "by", "device"):
        entry[name] = fields.take(name, is_text, True)
    fields.take("at", is_time, True)
    for name in ("vehicle", "visit", "of"):
        entry[name] = fields.take(name, lambda value: is_text(value) and is_digest(value))
    entry["n"] = whole(fields.take("n", lambda value: 0 < (whole(value) or 0) <= 10**12, True))
    replaces = fields.take("replaces", is_list_of(lambda value: is_text(value) and is_digest(value))) or []
    need(len(replaces) <= 64, "it replaces too many")
    entry["replaces"] = set(replaces)
    entry["struck"] = fields.take("struck", lambda value: isinstance(value, bool)) or False
    says = fields.take("says", is_object)
    need(not (entry["struck"] and says is not None), "it says and strikes")
    known = entry["kind"] in KINDS
    entry["said"], in_part = None, bool(fields.fields)
    if form == 1 and not entry["struck"]:
        need(says is not None or not known, "it says nothing")
        if known and not (entry["kind"] in ("limit", "same-as") and entry["vehicle"]):
            inner = Fields(says)
            entry["said"] = SAYS[entry["kind"]](entry["slot"], inner)
            in_part = in_part or bool(inner.fields)
    if known and entry["kind"] not in ("vehicle", "limit", "same-as"):
        need(entry["vehicle"] is not None, "it has no vehicle")
    read = entry["said"] is not None
    of_visit = entry["kind"] in ("reading", "round", "tyring") or read and entry["kind"] in ("decision", "report")
    need(not of_visit or entry["visit"] is not None, "it has no examination")
    entry["newer"] = in_part or not (read or entry["struck"])
    return entry


def words(of, field):
    return DEFS[of]["properties"][field]["examples"]


def known_words(said, of, *fields):
    """What was said, if all its words are known."""
    known = all(said[field] is None or said[field] in words(of, field) for field in fields)
    return said if known else None


def says_vehicle(slot, fields):
    if slot != "vehicle":
        return None
    said = {"kind": fields.take("kind", is_text, True), "name": fields.take("name", is_text) or ""}
    return known_words(said, "vehicle", "kind")


def says_wheel(slot, fields):
    if not slot_is("wheel-slot")(slot):
        return None
    carried = fields.take("felloes", is_list_of(lambda value: whole(value) is not None), True)
    carried = [whole(spokes) for spokes in carried]
    need(1 <= len(carried) <= 32 and 0 not in carried and 3 <= sum(carried) <= 64, "felloes")
    said = {"felloes": carried}
    for field in ("rim", "tyre", "arm", "keeper"):
        said[field] = fields.take(field, is_text)
    sizes = Fields(fields.take("sizes_mm", is_object) or {})
    for size in DEFS["wheel"]["properties"]["sizes_mm"]["properties"]:
        mm = sizes.take(size, is_length)
        said[size] = None if mm is None else float(mm)
    fields.fields.update(sizes.fields)
    return known_words(said, "wheel", "rim", "tyre", "arm", "keeper")


def says_visit(slot, fields):
    if slot != "visit":
        return None
    uses = fields.take("used_for", is_list_of(is_text)) or []
    said = {"used_for": set(uses)}
    for field in ("place", "conditions"):
        said[field] = fields.take(field, is_text) or ""
    said["safe_to_lift"] = fields.take("safe_to_lift", is_text)
    stage = fields.take("stage", is_text)
    said["stage"] = "on-the-arm" if stage is None else stage
    known = said["used_for"] <= set(DEFS["visit"]["properties"]["used_for"]["items"]["examples"])
    return known_words(said, "visit", "stage", "safe_to_lift") if known else None


def says_reading(slot, fields):
    if not slot_is("reading-slot")(slot):
        return None
    fields.take("written", is_text)
    said = {"answer": fields.take("answer", is_text, True)}
    if said["answer"] == "length":
        said["mm"] = float(fields.take("mm", is_length, True))
        said["doubt_mm"] = float(fields.take("doubt_mm", within(0, 20_000), True))
    if said["answer"] == "over":
        said["mm"] = float(fields.take("mm", is_length, True))
    if said["answer"] == "share":
        said["percent"] = hundredths(fields.take("percent", is_share, True))
    return known_words(said, "reading", "answer")


def hundredths(share):
    return math.floor(float(share) * 100 + 0.5)


def says_remark(slot, fields):
    return {"text": fields.take("text", is_text, True)} if slot_is("part-slot")(slot) else None


def says_picture(slot, fields):
    if not slot_is("part-slot")(slot):
        return None
    said = {"sha256": fields.take("sha256", lambda value: is_text(value) and is_digest(value), True)}
    for field in ("width", "height", "bytes"):
        said[field] = whole(fields.take(field, is_size, True))
    return said


def says_erasure(slot, fields):
    need(is_digest(slot), "an erasure's slot is a digest")
    return {}


def is_spot(value):
    within = lambda n: whole(n) is not None and whole(n) <= 1000
    return isinstance(value, list) and len(value) == 2 and all(map(within, value))


def says_marks(slot, fields):
    if not is_digest(slot):
        return None
    all_known, marks = True, []
    for fields_of_mark in fields.take("marks", is_list_of(is_object), True):
        mark = Fields(fields_of_mark)
        said = {"mark": mark.take("mark", is_text, True)}
        all_known = all_known and said["mark"] in words("mark", "mark")
        if said["mark"] in words("mark", "mark"):
            spots = mark.take("at", is_list_of(is_spot), True)
            fits = {"line": len(spots) >= 2, "ring": len(spots) == 2, "pin": len(spots) == 1}
            need(fits[said["mark"]], "a mark has too few places, or too many")
            said["at"] = [[whole(n) for n in spot] for spot in spots]
            if said["mark"] == "pin":
                said["text"] = mark.take("text", is_text) or ""
        fields.fields.update(mark.fields)
        marks.append(said)
    return {"marks": marks} if all_known else None


def is_short(value):
    return whole(value) is not None and whole(value) <= 65_535


def is_degrees(value):
    return within(-90, 1500)(value) and float(value) == int(float(value))


def is_pair_of(first, second):
    return lambda value: isinstance(value, list) and len(value) == 2 and first(value[0]) and second(value[1])


def says_round(slot, fields):
    if not slot_is("round-slot")(slot):
        return None
    said = {"with": fields.take("with", is_text, True), "number": whole(fields.take("number", is_short, True))}
    known = said["with"] in words("round", "with")
    if said["with"] == "traveller":
        said["turn_mm"] = float(fields.take("turn_mm", is_length, True))
        said["turn_doubt_mm"] = float(fields.take("turn_doubt_mm", within(0, 20_000), True))
    if said["with"] == "tape":
        said["class"] = fields.take("class", is_text, True)
        known = known and said["class"] in ("I", "II", "III")
    said["line"] = fields.take("line", is_text, True)
    runs = fields.take("runs", is_list_of(is_pair_of(is_short, is_length)), True)
    need(runs, "no runs")
    said["runs"] = [[whole(turns), float(past)] for turns, past in runs]
    warm, about = fields.take("warm_c", is_degrees), fields.take("warm_within_k", is_short)
    if warm is not None:
        said["warm"] = [int(float(warm)), whole(about) if about is not None else 0]
    said["hot_weld"] = fields.take("hot_weld", lambda value: isinstance(value, bool)) or False
    fields.take("written", is_text)
    return known_words(said, "round", "line") if known else None


def says_tyring(slot, fields):
    if not slot_is("tyring-slot")(slot):
        return None
    forms = {
        "_mm": (is_length, float), "_s": (is_short, whole), "_c": (is_degrees, lambda value: int(float(value))),
    }
    said, known = {}, True
    for field in DEFS["tyring"]["properties"]:
        form = next((form for end, form in forms.items() if field.endswith(end)), None)
        if form is not None:
            value = fields.take(field, form[0])
            said[field] = form[1](value) if value is not None else None
        elif field == "months":
            humidity = lambda value: whole(value) is not None and whole(value) <= 100
            months = fields.take(field, is_list_of(is_pair_of(humidity, is_degrees)))
            need(months is None or len(months) == 12, "twelve months")
            said[field] = months and [[whole(damp), int(float(air))] for damp, air in months]
        else:
            said[field] = fields.take(field, is_text)
            of_timber = field in ("nave", "spokes", "felloes")
            of_grain = field.endswith("_grain")
            shared = "timber" if of_timber else "grain" if of_grain else None
            lawful = DEFS[shared]["examples"] if shared else words("tyring", field)
            known = known and (said[field] is None or said[field] in lawful)
    return said if known else None


def says_decision(slot, fields):
    if not slot_is("decision-slot")(slot):
        return None
    said = {field: fields.take(field, is_text, True) for field in ("standing", "proposed")}
    fields.take("reason", is_text)
    said["look_again"] = fields.take("look_again", is_day)
    fields.take("signed", is_text, True)
    known = all(said[field] in DEFS["standing"]["examples"] for field in ("standing", "proposed"))
    return {field: said[field] for field in ("standing", "look_again")} if known else None


def says_limit(slot, fields):
    if not slot_is("limit-slot")(slot):
        return None
    ways = [way for way in ("mm", "percent", "count", "off") if way in fields.fields]
    need(len(ways) == 1, "a limit is set in one way")
    forms = {"mm": is_length, "percent": is_share, "count": is_size, "off": lambda value: value is True}
    value = fields.take(ways[0], forms[ways[0]], True)
    to = {"mm": float, "percent": hundredths, "count": whole, "off": bool}[ways[0]]
    return {ways[0]: to(value)}


def says_same_as(slot, fields):
    ids = slot.split("/")
    if len(ids) != 2 or not all(is_digest(id) for id in ids) or ids[0] >= ids[1]:
        return None
    return {}


def says_work(slot, fields):
    if not slot_is("part-slot")(slot):
        return None
    said = {"did": fields.take("did", is_list_of(is_text), True)}
    for field in ("text", "by_whom"):
        said[field] = fields.take(field, is_text) or ""
    known = DEFS["work"]["properties"]["did"]["items"]["examples"]
    return said if set(said["did"]) <= set(known) else None


def says_report(slot, fields):
    if slot != "vehicle/report":
        return None
    return {field: fields.take(field, is_text, True) for field in ("text", "to", "core")}


SAYS = {
    "vehicle": says_vehicle, "wheel": says_wheel, "visit": says_visit, "reading": says_reading,
    "remark": says_remark, "picture": says_picture, "erasure": says_erasure, "decision": says_decision,
    "limit": says_limit, "same-as": says_same_as, "work": says_work, "report": says_report,
    "marks": says_marks, "round": says_round, "tyring": says_tyring,
}


# 5. Books


def order(entry):
    return entry["n"], entry["id"]


# Each vehicle that is one with others, and the one that stands for them.
STANDS_FOR = {}


def subject(entry):
    begun = entry["id"] if entry["kind"] == "vehicle" else "house"
    return STANDS_FOR.get(entry["vehicle"] or begun, entry["vehicle"] or begun)


def join_vehicles(book):
    STANDS_FOR.clear()
    said = {}
    for entry in book.values():
        if entry["kind"] == "same-as":
            said.setdefault(group(entry), []).append(entry)
    for entries in said.values():
        for thread in threads_of_group(book, entries, True):
            for entry in thread.counts():
                if entry["said"] is not None:
                    ids = [STANDS_FOR.get(id, id) for id in entry["slot"].split("/")]
                    for id in [*ids, *[id for id, first in STANDS_FOR.items() if first in ids]]:
                        STANDS_FOR[id] = min(ids)


def group(entry):
    within = entry["visit"] if entry["kind"] in ("decision", "round", "tyring") else None
    return subject(entry), entry["kind"], entry["slot"], within


def agree(one, other):
    if one["struck"] or other["struck"]:
        return one["struck"] and other["struck"]
    if one["said"] is None or one["said"] != other["said"]:
        return False
    of_a_visit = one["kind"] in ("reading", "remark", "picture", "work", "report")
    return not of_a_visit or one["visit"] == other["visit"]


class Thread:
    def __init__(self, entries, replaced, not_here):
        self.entries = sorted(entries, key=order)
        self.not_here = not_here
        self.heads = [entry for entry in self.entries if entry["id"] not in replaced]
        first = self.heads[0]
        if not all(agree(first, other) for other in self.heads[1:]):
            self.comes_to = "dispute"
        else:
            self.comes_to = "struck" if first["struck"] else "settled"

    def counts(self):
        if self.comes_to == "dispute":
            return [head for head in self.heads if not head["struck"]]
        return self.heads[:1] if self.comes_to == "settled" else []

    def is_void(self):
        return len(self.entries) == 1 and self.entries[0]["struck"] and not self.not_here

    def has(self, id):
        return id in self.not_here or any(entry["id"] == id for entry in self.entries)


def threads_of(book):
    join_vehicles(book)
    groups = {}
    for entry in book.values():
        groups.setdefault(group(entry), []).append(entry)
    threads = []
    for (_, kind, _, _), entries in groups.items():
        threads += threads_of_group(book, entries, kind in ONE_THREAD)
    return threads


def threads_of_group(book, entries, one_thread):
    ids = {entry["id"] for entry in entries}
    together = {entry["id"]: entry["id"] for entry in entries}
    replaced, missing = set(), {}

    def root(id):
        while together[id] != id:
            id = together[id]
        return id

    bearing = []
    for entry in entries:
        here = entry["replaces"] & ids
        not_here = entry["replaces"] - set(book)
        replaced |= here
        for id in here:
            together[root(entry["id"])] = root(id)
        for id in not_here:
            missing.setdefault(id, []).append(entry["id"])
        if here or not_here or not entry["struck"]:
            bearing.append(entry["id"])
    for names in list(missing.values()) + ([bearing] if one_thread else []):
        for id in names[1:]:
            together[root(id)] = root(names[0])
    threads = {}
    for entry in entries:
        threads.setdefault(root(entry["id"]), []).append(entry)
    return [
        Thread(inner, replaced, {id for id, names in missing.items() if root(names[0]) == top})
        for top, inner in threads.items()
    ]


def erased(threads):
    counting = [entry for thread in threads for entry in thread.counts() if entry["said"] is not None]
    return {entry["slot"] for entry in counting if entry["kind"] == "erasure"}


def hidden(book, threads):
    struck_vehicles, visits, pictures = set(), {}, {}
    for thread in threads:
        first = thread.entries[0]
        of, kind, slot, _ = group(first)
        if (kind, slot) == ("vehicle", "vehicle") and not thread.is_void() and thread.comes_to == "struck":
            struck_vehicles.add(of)
        if kind == "visit":
            visits.setdefault(of, []).append(thread)
        if kind == "picture":
            for name in {entry["said"]["sha256"] for entry in thread.entries if entry["said"] is not None}:
                pictures.setdefault((of, name), []).append(thread)
    gone = erased(threads)
    for of in visits.values():
        of.sort(key=lambda thread: order(thread.entries[0]))

    def is_hidden(entry):
        if subject(entry) in struck_vehicles:
            return True
        if entry["kind"] == "marks":
            spoken = pictures.get((subject(entry), entry["slot"]), [])
            if entry["slot"] in gone or spoken and all(thread.comes_to == "struck" for thread in spoken):
                return True
        named = [thread for thread in visits.get(subject(entry), []) if thread.has(entry["visit"])]
        return bool(named) and named[0].comes_to == "struck"

    return [id for id, entry in book.items() if subject(entry) != "house" and is_hidden(entry)]


def told(data):
    try:
        book, warnings = read_file(data)
    except Refused as why:
        return {"refused": str(why)}
    threads = threads_of(book)
    return {
        "ids": sorted(book),
        "threads": sorted(
            [[entry["id"] for entry in thread.entries], [head["id"] for head in thread.heads],
             sorted(thread.not_here), thread.comes_to]
            for thread in threads
        ),
        "hidden": sorted(hidden(book, threads)),
        "erased": sorted(erased(threads)),
        "newer": sorted(id for id, entry in book.items() if entry["newer"]),
        "warnings": sorted(warnings),
    }


for path in sys.stdin:
    with open(path.rstrip("\n"), "rb") as file:
        print(json.dumps(told(file.read())))

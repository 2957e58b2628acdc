#!/usr/bin/env python3
"""Measures of MIT annotation files, computed without any code of the project.

usage: measures-of-annotations.py HZ SAMPLES FILE...

Prints a line `file NAME` and then `measure value` lines, one file after the other. Classes: AAMI by the MIT-BIH mapping (Journal of Healthcare Engineering 2021, 8642576).
Heart rate variability: Task Force ESC/NASPE, Eur Heart J 1996;17:354-381. Flutter ([ to ]) parts what is around it.
"""
import struct
import sys

import numpy as np

CLASSES = dict(zip("1 2 3 25 34 11 35".split(), "N" * 7)) | dict(zip("8 4 7 9".split(), "SSSS"))
CLASSES |= {"5": "V", "10": "V", "41": "V", "6": "F", "12": "Q", "13": "Q", "38": "Q"}


def annotations(path):
    with open(path, "rb") as file:
        data = file.read()
    at, i = 0, 0
    while i + 1 < len(data):
        word = data[i] + 256 * data[i + 1]
        i += 2
        if word == 0:
            return
        code, step = divmod(word, 1024)
        if code == 59:
            high, low = struct.unpack_from("<hH", data, i)
            at += high * 65536 + low
            i += 4
        elif code == 63:
            i += (step + 1) // 2 * 2
        elif code < 60:
            at += step
            yield at, code


def read(path, samples):
    beats, parts, since = [], [], None
    for at, code in annotations(path):
        if str(code) in CLASSES and at < samples:
            beats.append((at, CLASSES[str(code)]))
        elif code == 32:
            since = at
        elif code == 33 and since is not None:
            parts.append((since, at))
            since = None
    return beats, parts


def rows(letters, joined, letter):
    """Lengths of rows of one class, not across a break."""
    lengths, length = [], 0
    for i, each in enumerate(letters):
        length = (length + 1 if length and joined[i - 1] else 1) if each == letter else 0
        last = i + 1 == len(letters) or letters[i + 1] != letter or not joined[i]
        if each == letter and last:
            lengths.append(length)
            length = 0
    return lengths


def ectopy(letters, joined, letter):
    lengths = rows(letters, joined, letter)
    runs = [n for n in lengths if n >= 3]
    return {
        "beats": letters.count(letter),
        "couplets": lengths.count(2),
        "triplets": lengths.count(3),
        "runs": len(runs),
        "runBeats": sum(runs),
        "longestRun": max(runs, default=0),
    }


def variability(times, letters, joined, hz):
    normal = np.array([j and a == b == "N" for a, b, j in zip(letters, letters[1:], joined)], bool)
    nn = np.diff(times) * 1000.0 / hz
    pairs = normal[:-1] & normal[1:]
    steps = np.diff(nn)[pairs]
    kept, begins = nn[normal], times[:-1][normal] / hz
    result = {"intervals": len(kept), "analysed": kept.sum() / 1000}
    segments = [kept[(begins >= s) & (begins < s + 300)] for s in np.arange(0, begins.max(initial=0) + 300, 300)]
    segments = [s for s in segments if len(s) > 1 and s.sum() >= 150_000]
    if result["analysed"] >= 300 and len(steps):
        result["sdnn"] = kept.std(ddof=1)
        result["rmssd"] = np.sqrt(np.mean(steps**2))
        result["pnn50"] = 100 * np.mean(np.abs(steps) > 50)
    if len(segments) > 1:
        result["sdann"] = np.std([s.mean() for s in segments], ddof=1)
    if segments:
        result["sdnnIndex"] = np.mean([s.std(ddof=1) for s in segments])
    if result["analysed"] >= 1200:
        bins = np.floor(kept * 128 / 1000 + 1e-9).astype(int)
        result["triangularIndex"] = len(kept) / np.bincount(bins).max()
    return result


def measures(path, hz, samples):
    beats, parts = read(path, samples)
    times = np.array([at for at, _ in beats])
    letters = [letter for _, letter in beats]
    joined = [not any(s < b and t >= a for a, b in parts) for s, t in zip(times, times[1:])]
    longest = max((int(t - s) for s, t, j in zip(times, times[1:], joined) if j), default=0)
    return {
        "classes": {letter: letters.count(letter) for letter in "NSVFQ"},
        "ventricular": ectopy(letters, joined, "V"),
        "supraventricular": ectopy(letters, joined, "S"),
        "longest": longest,
        "variability": variability(times, letters, joined, hz),
    }


def lines(prefix, value):
    if not isinstance(value, dict):
        return [f"{prefix} {float(value)!r}"]
    return [line for key, each in value.items() for line in lines(f"{prefix}.{key}" if prefix else key, each)]


for name in sys.argv[3:]:
    print("file", name.split("/")[-1])
    print("\n".join(lines("", measures(name, float(sys.argv[1]), int(sys.argv[2])))))

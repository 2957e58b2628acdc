"""Reads a DICOM waveform with pydicom: IN.dcm OUT.raw OUT.json MICROVOLTS_PER_UNIT

Every multiplex group has to be readable. OUT.raw gets the stored samples of the first (channels interleaved, 16-bit little endian); OUT.json what the object says of them, with the
largest distance in microvolts between a sample as pydicom calibrates it and sample x MICROVOLTS_PER_UNIT.
"""
import json
import sys

import numpy
import pydicom
from pydicom.multival import MultiValue
from pydicom.waveforms import multiplex_array

source, raw, about, unit = sys.argv[1:]
dataset = pydicom.dcmread(source)
groups = dataset.get("WaveformSequence", [])
if not groups:
    sys.exit("no multiplex group")
for number in range(len(groups)):
    multiplex_array(dataset, number, as_raw=False)
group = groups[0]
stored = multiplex_array(dataset, 0, as_raw=True)
calibrated = multiplex_array(dataset, 0, as_raw=False)
microvolts = {"nV": 1e-3, "uV": 1.0, "mV": 1e3, "V": 1e6}


def scale(channel):
    units = channel.get("ChannelSensitivityUnitsSequence")
    return microvolts[units[0].CodeValue] if units else 1.0


scales = numpy.array([scale(channel) for channel in group.ChannelDefinitionSequence])
stored.astype("<i2").tofile(raw)


def positions(annotation):
    value = annotation.get("ReferencedSamplePositions", [])
    return [int(v) for v in value] if isinstance(value, (list, MultiValue)) else [int(value)]


# of all annotations of the first group that mark points: the code of what is marked -> its samples, the first is 1
points = {}
for annotation in dataset.get("WaveformAnnotationSequence", []):
    if annotation.get("TemporalRangeType") in ("POINT", "MULTIPOINT") and "ConceptNameCodeSequence" in annotation:
        assert annotation.ReferencedWaveformChannels[0] == 1, "an annotation of another group"
        concept = annotation.ConceptNameCodeSequence[0]
        points.setdefault(concept.CodingSchemeDesignator + " " + concept.CodeValue, []).extend(positions(annotation))
with open(about, "w") as out:
    json.dump(
        {
            "groups": len(groups),
            "channels": int(stored.shape[1]),
            "samples": int(stored.shape[0]),
            "hz": float(group.SamplingFrequency),
            "points": points,
            "microvoltsOff": float(numpy.abs(calibrated * scales - stored * float(unit)).max()),
        },
        out,
    )

# Writes Ambulatory ECG objects with pydicom into a folder: good.dcm, and one for each fault, named like it.
import copy
import os
import struct
import sys
from pydicom.dataset import Dataset, FileDataset, FileMetaDataset
from pydicom.sequence import Sequence
from pydicom.uid import ExplicitVRLittleEndian


def code(value, scheme, meaning):
    item = Dataset()
    item.CodeValue, item.CodingSchemeDesignator, item.CodeMeaning = value, scheme, meaning
    return Sequence([item])


def channel():
    c = Dataset()
    c.ChannelSourceSequence = code("2:2", "MDC", "Lead II")
    c.ChannelSensitivity, c.ChannelBaseline, c.ChannelSensitivityCorrectionFactor = "5", "0", "1"
    c.ChannelSensitivityUnitsSequence = code("uV", "UCUM", "microvolt")
    c.ChannelSampleSkew, c.WaveformBitsStored = "0", 16
    return c


def annotation(kind, *positions):
    a = Dataset()
    a.ConceptNameCodeSequence = code("10:8208", "MDC", "Normal beat")
    a.ReferencedWaveformChannels, a.TemporalRangeType = [1, 0], kind
    a.ReferencedSamplePositions = list(positions)
    return a


def good():
    g = Dataset()
    g.WaveformOriginality = "ORIGINAL"
    g.NumberOfWaveformChannels, g.NumberOfWaveformSamples, g.SamplingFrequency = 2, 3, "200"
    g.ChannelDefinitionSequence = Sequence([channel(), channel()])
    g.WaveformBitsAllocated, g.WaveformSampleInterpretation = 16, "SS"
    g.WaveformData = struct.pack("<6h", 1, -2, 3, -4, 300, -400)
    ds = Dataset()
    ds.SOPClassUID, ds.SOPInstanceUID, ds.Modality = "1.2.840.10008.5.1.4.1.1.9.1.3", "2.25.1", "ECG"
    ds.WaveformSequence = Sequence([g])
    ds.WaveformAnnotationSequence = Sequence([annotation("MULTIPOINT", 1, 3), annotation("SEGMENT", 1, 2)])
    return ds


def thirteen(ds, g, c, a):
    g.NumberOfWaveformChannels = 13
    g.ChannelDefinitionSequence = Sequence([copy.deepcopy(c) for _ in range(13)])
    g.WaveformData = bytes(13 * 3 * 2)


def arbitrary(ds, g, c, a):
    del c.ChannelSensitivity, c.ChannelSensitivityUnitsSequence, c.ChannelBaseline
    del c.ChannelSensitivityCorrectionFactor


def put(part, name, value):
    return lambda ds, g, c, a: setattr({"o": ds, "g": g, "c": c, "a": a}[part], name, value)


def drop(part, name):
    return lambda ds, g, c, a: delattr({"o": ds, "g": g, "c": c, "a": a}[part], name)


FAULTS = {
    "good": lambda ds, g, c, a: None,
    "rate-20": put("g", "SamplingFrequency", "20"),
    "rate-4000": put("g", "SamplingFrequency", "4000"),
    "thirteen-channels": thirteen,
    "sample-short": put("g", "NumberOfWaveformSamples", 4),
    "sample-over": put("g", "NumberOfWaveformSamples", 2),
    "modality": put("o", "Modality", "HD"),
    "interpretation": put("g", "WaveformSampleInterpretation", "US"),
    "two-groups": lambda ds, g, c, a: ds.WaveformSequence.append(copy.deepcopy(g)),
    "no-sensitivity": drop("c", "ChannelSensitivity"),
    "no-units": drop("c", "ChannelSensitivityUnitsSequence"),
    "arbitrary-units": arbitrary,
    "no-source": drop("c", "ChannelSourceSequence"),
    "no-skew": drop("c", "ChannelSampleSkew"),
    "no-definition": lambda ds, g, c, a: g.ChannelDefinitionSequence.pop(),
    "past-the-end": put("a", "ReferencedSamplePositions", [1, 4]),
    "sample-zero": put("a", "ReferencedSamplePositions", [0, 1]),
    "group-two": put("a", "ReferencedWaveformChannels", [2, 0]),
    "channel-three": put("a", "ReferencedWaveformChannels", [1, 3]),
    "odd-segment": put("a", "ReferencedSamplePositions", [1, 2, 3]),
    "text-and-concept": put("a", "UnformattedTextValue", "a text"),
}
for name, spoil in FAULTS.items():
    file = os.path.join(sys.argv[1], name + ".dcm")
    meta = FileMetaDataset()
    meta.MediaStorageSOPClassUID, meta.MediaStorageSOPInstanceUID = "1.2.840.10008.5.1.4.1.1.9.1.3", "2.25.1"
    meta.TransferSyntaxUID = ExplicitVRLittleEndian
    ds = good()
    group = ds.WaveformSequence[0]
    spoil(ds, group, group.ChannelDefinitionSequence[0], ds.WaveformAnnotationSequence[1])
    whole = FileDataset(file, ds, file_meta=meta, preamble=b"\0" * 128)
    whole.is_little_endian, whole.is_implicit_VR = True, False
    whole.save_as(file, write_like_original=False)

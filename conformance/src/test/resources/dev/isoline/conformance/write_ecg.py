# Writes a small General ECG waveform object with pydicom: two channels of three samples, 5 uV a unit, 250 Hz.
import struct
import sys
from pydicom.dataset import Dataset, FileDataset, FileMetaDataset
from pydicom.sequence import Sequence
from pydicom.uid import ExplicitVRLittleEndian
meta = FileMetaDataset()
meta.MediaStorageSOPClassUID = "1.2.840.10008.5.1.4.1.1.9.1.2"
meta.MediaStorageSOPInstanceUID = "2.25.1"
meta.TransferSyntaxUID = ExplicitVRLittleEndian
ds = FileDataset(sys.argv[1], {}, file_meta=meta, preamble=b"\0" * 128)
ds.SOPClassUID, ds.SOPInstanceUID = meta.MediaStorageSOPClassUID, "2.25.1"
def channel():
    unit = Dataset()
    unit.CodeValue, unit.CodingSchemeDesignator, unit.CodeMeaning = "uV", "UCUM", "microvolt"
    c = Dataset()
    c.ChannelSensitivity, c.ChannelBaseline, c.ChannelSensitivityCorrectionFactor = "5", "0", "1"
    c.ChannelSensitivityUnitsSequence, c.WaveformBitsStored = Sequence([unit]), 16
    return c
g = Dataset()
g.NumberOfWaveformChannels, g.NumberOfWaveformSamples, g.SamplingFrequency = 2, 3, "250"
g.ChannelDefinitionSequence = Sequence([channel(), channel()])
g.WaveformBitsAllocated, g.WaveformSampleInterpretation = 16, "SS"
g.WaveformData = struct.pack("<6h", 1, -2, 3, -4, 300, -400)
ds.WaveformSequence = Sequence([g])
ds.is_little_endian, ds.is_implicit_VR = True, False
ds.save_as(sys.argv[1], write_like_original=False)

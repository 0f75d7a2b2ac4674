"""The job within a PDF: the sheet that hangs on the wall brings its job back.

The job file (openapi/job.schema.json) is an embedded file (ISO 32000-2, 7.11.4) with the
relationship Source (14.13). It stands in one line and is not compressed, so that a reader without a
PDF library finds it: the text between LEAD and the next end of line.
"""

import json

from reportlab.pdfbase.pdfdoc import PDFArray, PDFDictionary, PDFName, PDFStream, PDFString
from reportlab.pdfgen.canvas import Canvas

from ..named_types import Document

FILE_NAME = "job.ringwright.json"
LEAD = 'stream\n{"format":"ringwright-job",'
_MEANING = "The job behind these sheets: bring this PDF into the app's job book"


def job_file(carried: Document) -> str:
    """The job file of a job that job_link.job_of gives, as one line of ASCII."""
    whole = {"format": carried["format"], "version": carried["version"], "jobs": [carried["job"]]}
    return json.dumps(whole, separators=(",", ":"))


def attach(canvas: Canvas, carried: Document) -> None:
    """Puts a job into the document of a reportlab canvas. carried: as job_link.job_of gives it."""
    document = canvas._doc
    text = job_file(carried)
    kind = {
        "Type": PDFName("EmbeddedFile"),
        "Subtype": "/application#2Fjson",
        "Params": PDFDictionary({"Size": len(text) + 1}),
    }
    stream = PDFStream(PDFDictionary(kind), text + "\n", filters=[])
    held = document.Reference(stream)
    described = document.Reference(
        PDFDictionary(
            {
                "Type": PDFName("Filespec"),
                "F": PDFString(FILE_NAME),
                "UF": PDFString(FILE_NAME),
                "Desc": PDFString(_MEANING),
                "AFRelationship": PDFName("Source"),
                "EF": PDFDictionary({"F": held, "UF": held}),
            }
        )
    )
    named = PDFDictionary({"Names": PDFArray([PDFString(FILE_NAME), described])})
    catalog = document.Catalog
    catalog.Names = PDFDictionary({"EmbeddedFiles": named})
    # reportlab knows no associated files: this catalogue writes one entry more.
    catalog.__NoDefault__ = [*catalog.__NoDefault__, "AF"]
    catalog.AF = PDFArray([described])

"""XML of parts: read without harm, written as it was apart from what is changed."""

import posixpath
from dataclasses import dataclass
from urllib.parse import unquote

from lxml import etree

from halfangle_client.fill._books.archive import Archive
from halfangle_client.fill.errors import FileRefused

_RELATIONSHIPS = "http://schemas.openxmlformats.org/package/2006/relationships"


def parsed(archive: Archive, part: str) -> etree._Element:
    """Read a part. What names entities or files outside is refused. Raises FileRefused."""
    content = archive.read(part)
    if b"<!DOCTYPE" in content[:4096] or b"<!ENTITY" in content[:4096]:
        raise FileRefused(f"{archive.name}: the part {part} defines entities: no workbook does.")
    parser = etree.XMLParser(
        resolve_entities=False, no_network=True, huge_tree=False, remove_blank_text=False
    )
    try:
        return etree.fromstring(content, parser)
    except (etree.XMLSyntaxError, ValueError) as error:
        raise FileRefused(f"{archive.name}: the part {part} is no XML ({error}).") from error


def written(root: etree._Element) -> bytes:
    """The bytes of a part."""
    return etree.tostring(root, xml_declaration=True, encoding="UTF-8", standalone=True)


def local(element: etree._Element) -> str:
    """An element's name without its namespace; of a comment none."""
    return element.tag.rpartition("}")[2] if isinstance(element.tag, str) else ""


def drop(element: etree._Element, *attributes: str) -> None:
    """Take attributes off an element, where it has them."""
    for attribute in attributes:
        if attribute in element.attrib:
            del element.attrib[attribute]


def printable(text: str) -> str:
    r"""A text as XML can hold it: control characters are left out.

    >>> printable("a\x00b\nc\ud800")
    'ab\nc'
    """
    return "".join(
        c
        for c in text
        if c in "\t\n" or (c >= " " and not "\ud800" <= c <= "\udfff" and c not in "\ufffe\uffff")
    )


@dataclass(frozen=True, slots=True)
class Relation:
    """One part named by another."""

    id: str
    kind: str
    target: str


def relations(archive: Archive, part: str) -> list[Relation]:
    """The parts that one names (`""`: the whole file), those outside the file left out."""
    folder, _, name = part.rpartition("/")
    listed = archive.named(f"{folder}/_rels/{name}.rels".lstrip("/"))
    if listed is None:
        return []
    found = []
    for entry in parsed(archive, listed).iter(f"{{{_RELATIONSHIPS}}}Relationship"):
        if entry.get("TargetMode") == "External":
            continue
        target = unquote(entry.get("Target", ""))
        whole = target.lstrip("/") if target.startswith("/") else posixpath.join(folder, target)
        kind = entry.get("Type", "")
        found.append(Relation(entry.get("Id", ""), kind, posixpath.normpath(whole)))
    return found

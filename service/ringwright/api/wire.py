"""The answer to what is no HTTP request at all, which a server refuses before the application sees
it: the same problem document, as the bytes that go over the wire."""

from http import HTTPStatus

from ..core.problems import Fault
from . import headers, limits, problems


def refusal(status: int, said: str) -> bytes:
    """A whole HTTP/1.1 answer, bytes; the connection ends with it.

    status: by which the server would refuse. said: its words, which may repeat a stranger's.
    """
    code = problems.code_of(status)
    kind = problems.KINDS[code]
    told = problems.sendable(said)[: limits.LONGEST_NAME] or kind.title
    answer = problems.problem(code, told, [Fault((), code, told, kind.remedy)])
    content = answer.get_data()
    lines = ["HTTP/1.1 %d %s" % (answer.status_code, HTTPStatus(answer.status_code).phrase)]
    fields = [*answer.headers.items(), *headers.ON_EVERY_ANSWER, headers.POLICY]
    lines += ["%s: %s" % pair for pair in fields if pair[0] != "Content-Length"]
    lines += ["Content-Length: %d" % len(content), "Connection: close", "", ""]
    return "\r\n".join(lines).encode("latin-1") + content

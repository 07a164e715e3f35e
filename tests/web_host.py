"""A web host for tests: compresses as hosts do, can be updated, can fail, and can be gone."""

import gzip
import http.server
import mimetypes
import threading
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import unquote, urlsplit

mimetypes.add_type("application/manifest+json", ".webmanifest")


class WebHost:
    """What the host serves, and how it fares at the moment."""

    def __init__(self, site: Path, under: str = "/") -> None:
        self.site = site
        self.under = under
        """The folder of the host that the site lies in."""
        self.gone = False
        """No answer at all, as without a signal."""
        self.failing: set[str] = set()
        """Files that it cannot give."""
        self.asked: Counter[str] = Counter()
        """How often each file was sent whole."""
        self.address = ""

    def url(self, path: str) -> str:
        return f"{self.address}{self.under}{path}"


class Server(http.server.ThreadingHTTPServer):
    """A browser opens six lines at once; one that finds no room is tried again much later."""

    daemon_threads = True
    request_queue_size = 64


@contextmanager
def web_host(site: Path, under: str = "/") -> Iterator[WebHost]:
    host = WebHost(site, under)

    class Handler(http.server.BaseHTTPRequestHandler):
        protocol_version = "HTTP/1.1"

        def do_GET(self) -> None:
            answer(host, self)

        def log_message(self, format: str, *args: object) -> None:  # noqa: A002
            pass

    with Server(("127.0.0.1", 0), Handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        host.address = f"http://127.0.0.1:{server.server_port}"
        yield host
        server.shutdown()


def answer(host: WebHost, request: http.server.BaseHTTPRequestHandler) -> None:
    if host.gone:
        request.close_connection = True
        return
    path = unquote(urlsplit(request.path).path)
    inside = path.removeprefix(host.under) if path.startswith(host.under) else "nowhere"
    name = f"{inside}index.html" if inside in ("",) or inside.endswith("/") else inside
    file = host.site / name
    if name in host.failing:
        send(request, 500, b"", "text/plain")
    elif not file.is_file():
        send(request, 404, b"not here", "text/plain")
    else:
        send_file(host, request, name, file.read_bytes())


def send_file(
    host: WebHost, request: http.server.BaseHTTPRequestHandler, name: str, data: bytes
) -> None:
    tag = f'"{hash(data):x}"'
    if request.headers.get("If-None-Match") == tag:
        send(request, 304, b"", "", tag)
        return
    host.asked[name] += 1
    kind = mimetypes.guess_type(name)[0] or "application/octet-stream"
    send(request, 200, data, kind, tag)


def send(
    request: http.server.BaseHTTPRequestHandler,
    status: int,
    data: bytes,
    kind: str,
    tag: str = "",
) -> None:
    request.send_response(status)
    if kind.startswith(("text/", "image/svg")) or "javascript" in kind or "json" in kind:
        data = gzip.compress(data, 6)
        request.send_header("Content-Encoding", "gzip")
    if tag:
        # As usual hosts of static pages have it: a browser may use a file for ten minutes unasked.
        request.send_header("ETag", tag)
        request.send_header("Cache-Control", "max-age=600")
    if kind:
        request.send_header("Content-Type", kind)
    request.send_header("Content-Length", str(len(data)))
    request.end_headers()
    request.wfile.write(data)

"""How gunicorn runs the service, on a bench machine (service/start) and in the container alike.

Every setting can be overruled on the command line or by GUNICORN_CMD_ARGS.
"""

import gc
import os
import ssl

from gevent import get_hub, monkey

# Before anything is loaded that the workers share.
monkey.patch_all()

from gunicorn import util  # noqa: E402

bind = "127.0.0.1:8000"
workers = int(os.environ.get("WEB_CONCURRENCY", "0")) or min(4, os.cpu_count() or 1)
# A client that sends slowly, or nothing, costs a worker of this kind no thread: hundreds of them
# leave the next honest caller as he was. With threads (gthread) forty stopped the service.
worker_class = "ringwright.server_worker.Worker"
worker_connections = 1000
keepalive = 30
# Load once and fork: the tables and the app's files are then shared by all workers.
preload_app = True
# The longest calculation takes a fraction of a second; a worker silent for this long is broken.
timeout = 30
graceful_timeout = 10
# One line may hold the longest query that the service answers (limits.LONGEST_QUERY) and its path.
limit_request_line = 8190
limit_request_fields = 60
limit_request_field_size = 8190
# The heartbeat file of a worker belongs in memory, not on a disk that may stall.
worker_tmp_dir = "/dev/shm" if os.path.isdir("/dev/shm") else None
# Newer releases would put a control socket into the home directory; nothing here needs one.
control_socket_disable = True
# Nobody in front may move the service under a path: an address that did not fit was a 500.
forwarder_headers = ""
accesslog = None
errorlog = "-"


def when_ready(server):
    # What is loaded now stays: keep the collector from touching, and so copying, shared pages.
    gc.collect()
    gc.freeze()


def post_worker_init(worker):
    # Who hangs up, or wants no certificate of ours, is no error of this program: a phone does so
    # each time it asks its owner, and gevent would print a page for it.
    hub = get_hub()
    hub.NOT_ERROR = (*hub.NOT_ERROR, ssl.SSLError, ConnectionError)
    # What is no HTTP is refused before the application sees it, and by its words all the same.
    util.write_error = _refuse


def _refuse(sock, status, reason, said):
    from ringwright.api.wire import refusal

    util.write_nonblock(sock, refusal(status, said))

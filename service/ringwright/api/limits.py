"""Every limit of the service, each with its reason."""

# A request of 500 list entries with ten long texts each is about 400 kB; nothing real is larger.
LARGEST_BODY = 1_000_000

# A season's rings of a club. The body's bound leaves a kilobyte for each.
MOST_JOBS = 1_000

# What all jobs of one request may cost by costs.py [ms]: three thorough cut lists, or a thousand of
# what is light. The others of the lane wait so long.
MOST_WORK = 3_000.0

# All answers of one request together: 1000 whole sizings are 10 MB. It is held in memory.
LARGEST_ANSWER = 16_000_000

# Below what gunicorn (8190) and the proxy (16 k) take in one request line: we answer, not they.
LONGEST_QUERY = 6_000

# The rest of a refused body is still read, so that a sender who writes before he reads gets the
# answer and not a broken connection; beyond this he is sending on purpose.
LARGEST_DRAIN = 32_000_000

# A whole number beyond this is no size of anything here, and floats above it lose whole numbers.
LARGEST_WHOLE_NUMBER = 2**53

# Nothing here is so small; the products of a few such numbers would be nought without a word.
SMALLEST_NUMBER = 1e-30

# Longer than any name of ours; a refusal repeats no more of a stranger's.
LONGEST_NAME = 80

# The longest words of ours, with the names of a whole table, are shorter.
LONGEST_WORDS = 2_000

# A wrong unit in a list of 500 entries need be told only so many times.
MOST_ERRORS = 50

# Answers change only with a release of the service; an hour keeps a bad release from living long.
ANSWER_SECONDS = 3600

# A browser may keep the answer to "may this page ask?" for a day (browsers cap it lower).
PREFLIGHT_SECONDS = 86400

# Files with a hash in their name never change: the longest time that caches honour.
FOREVER_SECONDS = 31536000

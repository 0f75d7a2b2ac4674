"""Files for paper and for other programs: DXF, PDF, CSV, and the link that carries a job.

Drawings come from core/drawing, figures from the calculations; nothing here works anything out.
"""

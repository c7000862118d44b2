"""Where renders, textures and other things that are not delivered are put."""
import os
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
CASE = os.path.join(os.path.dirname(HERE), 'ferry-auxiliary')
WORK = os.path.join(tempfile.gettempdir(), 'teardown-docket-photos')
os.makedirs(WORK, exist_ok=True)

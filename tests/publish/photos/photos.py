"""Photos by Pillow (python3-pil), which nobody here wrote.

    photos.py make FOLDER      writes photos that say where they were taken; prints their names, one a line
    photos.py compare A B      prints what differs between the photos of two folders, one a line
"""
import os
import sys

from PIL import Image, ImageCms, ImageSequence
from PIL.PngImagePlugin import PngInfo

SECRET = "SECRET 51.5 N"
XMP = f"<x:xmpmeta xmlns:x='adobe:ns:meta/'>{SECRET}</x:xmpmeta>".encode()


def exif():
    about = Image.Exif()
    about[0x0112] = 6  # Orientation: a quarter turn
    about[0x010E] = SECRET  # ImageDescription
    about[0x013B] = SECRET  # Artist
    return about.tobytes()


def picture(mode="RGB", shift=0):
    image = Image.new("RGB", (61, 37))
    image.putdata([((x * 4 + shift) % 256, (y * 6) % 256, (x * y) % 256) for y in range(37) for x in range(61)])
    return image.convert(mode)


def make(folder):
    def save(name, image, **options):
        image.save(os.path.join(folder, name), **options)
        print(name)

    colours = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    every = dict(exif=exif(), icc_profile=colours)
    save("plain.jpg", picture(), quality=80)
    save("tagged.jpg", picture(), comment=SECRET, **every)
    save("progressive.jpg", picture(), progressive=True, comment=SECRET, **every)
    save("grey.jpg", picture("L"), comment=SECRET, exif=exif())
    save("print.jpg", picture("CMYK"), comment=SECRET, exif=exif())
    # As telephones write them: XMP, IPTC and maker's segments before, a second picture behind.
    tagged = open(os.path.join(folder, "tagged.jpg"), "rb").read()
    segments = [(0xE1, b"http://ns.adobe.com/xap/1.0/\0" + XMP), (0xED, b"Photoshop 3.0\0" + SECRET.encode()),
                (0xE2, b"MPF\0" + SECRET.encode()), (0xE5, SECRET.encode())]
    extra = b"".join(b"\xff" + bytes([mark]) + (len(body) + 2).to_bytes(2, "big") + body for mark, body in segments)
    with open(os.path.join(folder, "telephone.jpg"), "wb") as file:
        file.write(tagged[:2] + extra + tagged[2:] + tagged)
    print("telephone.jpg")
    texts = PngInfo()
    texts.add_text("Comment", SECRET)
    texts.add_itxt("XML:com.adobe.xmp", XMP.decode())
    texts.add_text("Packed", SECRET, zip=False)
    for mode in ("RGB", "RGBA", "P", "L"):
        save(f"tagged-{mode}.png", picture(mode), pnginfo=texts, **every)
    moving = [picture("P", shift) for shift in (0, 60, 120)]
    save("moving.gif", moving[0], save_all=True, append_images=moving[1:], duration=90, loop=0, comment=SECRET)
    save("plain.webp", picture())
    save("tagged.webp", picture(), xmp=XMP, **every)
    save("lossless.webp", picture("RGBA"), lossless=True, xmp=XMP, **every)
    colourful = [picture("RGB", shift) for shift in (0, 60, 120)]
    save("moving.webp", colourful[0], save_all=True, append_images=colourful[1:], duration=90, xmp=XMP, exif=exif())


def about(image):
    return {
        "mode": image.mode, "size": image.size, "frames": getattr(image, "n_frames", 1), "loop": image.info.get("loop"),
        "colours": image.info.get("icc_profile"),
        "orientation": None if image.format == "PNG" else image.getexif().get(0x0112),
    }


def compare(left, right):
    for name in sorted(os.listdir(left)):
        with Image.open(os.path.join(left, name)) as a, Image.open(os.path.join(right, name)) as b:
            facts = about(a), about(b)
            for key in facts[0]:
                if facts[0][key] != facts[1][key]:
                    print(f"{name}: {key}")
            tags = set(b.getexif()) - {0x0112}
            if tags:
                print(f"{name}: tags {tags}")
            for n, (one, other) in enumerate(zip(ImageSequence.Iterator(a), ImageSequence.Iterator(b))):
                if one.info.get("duration") != other.info.get("duration"):
                    print(f"{name}: duration of picture {n}")
                if one.tobytes() != other.tobytes():
                    print(f"{name}: picture {n}")
        with open(os.path.join(right, name), "rb") as file:
            if b"SECRET" in file.read():
                print(f"{name}: tells where")


{"make": make, "compare": compare}[sys.argv[1]](*sys.argv[2:])
